// Simulations in tests must give the same numbers each time: a small generator that starts from a seed.

/** Endless independent standard normal values; the same seed gives the same values (mulberry32, Box-Muller). */
export function* seededNormals(seed: number): Generator<number, never> {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  for (;;) {
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    yield radius * Math.cos(angle);
    yield radius * Math.sin(angle);
  }
}
