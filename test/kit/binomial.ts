// How far a rate that was counted may be from the true one.

/**
 * The 95 % interval of a chance of which `hits` of `trials` were counted.
 * Source: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212.
 */
export function wilson(hits: number, trials: number): readonly [low: number, high: number] {
  const z = 1.959963984540054;
  const share = hits / trials;
  const middle = share + z ** 2 / (2 * trials);
  const half = z * Math.sqrt((share * (1 - share)) / trials + z ** 2 / (4 * trials ** 2));
  const whole = 1 + z ** 2 / trials;
  return [(middle - half) / whole, (middle + half) / whole];
}
