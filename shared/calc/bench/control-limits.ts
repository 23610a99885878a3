// Tells a bench that moves from one that merely scatters: the chart for individual values.

export interface ControlLimits {
  readonly centre: number;
  readonly low: number;
  readonly high: number;
  /** Mean of the moving ranges of two neighbours. */
  readonly movingRange: number;
}

/** 3/d2 with d2 = 1.128, the mean range of two standard normal values, as the standard rounds it. */
const SPREAD = 2.66;

/**
 * Shewhart's limits for individual values in their order: mean ± 2.66 times the mean moving range. `undefined` with
 * fewer than two values.
 * Source: ISO 7870-2:2013, control charts for individuals (section from memory); NIST/SEMATECH e-Handbook 6.3.2.2.
 */
export function controlLimits(values: readonly number[]): ControlLimits | undefined {
  if (values.length < 2) return undefined;
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  let ranges = 0;
  for (let i = 1; i < values.length; i++) ranges += Math.abs((values[i] ?? 0) - (values[i - 1] ?? 0));
  const movingRange = ranges / (values.length - 1);
  const spread = SPREAD * movingRange;
  return { centre, low: centre - spread, high: centre + spread, movingRange };
}
