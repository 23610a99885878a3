// The ends of a list of any length: handing its items to Math.max one by one fails beyond some hundred thousand.

/** The least and the greatest value; Infinity and -Infinity where there are none. */
export function extent(values: Iterable<number>): readonly [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}
