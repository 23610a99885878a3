// The straight line through points, and how well its slope is known.

export interface LinePoint {
  readonly x: number;
  readonly y: number;
}

export interface StraightLine {
  readonly slope: number;
  /** Value at `centre`, the mean of the points' x: the two are not correlated. */
  readonly mean: number;
  readonly centre: number;
  /** Standard deviation of the points about the line. */
  readonly deviation: number;
  /** Standard uncertainty of the slope. */
  readonly slopeUncertainty: number;
  readonly degreesOfFreedom: number;
}

/**
 * Ordinary least squares of y on x, with the standard error of the slope: s / sqrt(sum (x - mean)²). `undefined` with
 * fewer than three points, or all at one x.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods 2.3.6.5 and 4.4.4.1; checked there against the data set Norris.
 */
export function straightLine(points: readonly LinePoint[]): StraightLine | undefined {
  const count = points.length;
  if (count < 3) return undefined;
  const mean = (value: (point: LinePoint) => number) =>
    points.reduce((sum, point) => sum + value(point), 0) / count;
  const centre = mean(({ x }) => x);
  const level = mean(({ y }) => y);
  let xx = 0;
  let xy = 0;
  for (const { x, y } of points) {
    xx += (x - centre) ** 2;
    xy += (x - centre) * (y - level);
  }
  if (!(xx > 0)) return undefined;
  const slope = xy / xx;
  const squares = points.reduce((sum, { x, y }) => sum + (y - level - slope * (x - centre)) ** 2, 0);
  const degreesOfFreedom = count - 2;
  const deviation = Math.sqrt(squares / degreesOfFreedom);
  return {
    slope,
    mean: level,
    centre,
    deviation,
    slopeUncertainty: deviation / Math.sqrt(xx),
    degreesOfFreedom,
  };
}
