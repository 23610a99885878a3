// Middle and high values of readings whose scatter is not symmetric, such as times.

/** The middle value, or the mean of the two middle ones; `undefined` of none. */
export function median(values: readonly number[]): number | undefined {
  return quantileOf(values, 0.5);
}

/**
 * The value that a share `p` of the readings does not exceed, interpolated between neighbours at (n - 1)p (definition 7 of
 * Hyndman and Fan, The American Statistician 50 (1996) 361-365). `undefined` of none.
 */
export function quantileOf(values: readonly number[], p: number): number | undefined {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * p;
  const below = sorted[Math.floor(at)];
  const above = sorted[Math.ceil(at)];
  if (below === undefined || above === undefined) return undefined;
  return below + (above - below) * (at - Math.floor(at));
}

/** The largest value; `undefined` of none. */
export function largest(values: readonly number[]): number | undefined {
  return values.length === 0
    ? undefined
    : values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
}
