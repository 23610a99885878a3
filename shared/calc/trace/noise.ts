// Random numbers that are the same on every machine, for thresholds that no table gives.

/** Uniform numbers from 0 up to 1 out of a seed: the 32-bit generator of the xorshift family with a multiplied output. */
export function uniformNumbers(seed: number): () => number {
  let state = seed >>> 0 || 1;
  return () => {
    // G. Marsaglia, Xorshift RNGs, J. Statistical Software 8 (2003), 14: the triple 13, 17, 5.
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4294967296;
  };
}

/** Standard normal numbers out of a seed (G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29 (1958) 610-611). */
export function normalNumbers(seed: number): () => number {
  const uniform = uniformNumbers(seed);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
