// Fits a curve that is not linear in its parameters, with the parameters' standard errors.

/** A curve's values at all observed places. */
export type Curve = (parameters: readonly number[]) => Float64Array;

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Standard errors, for independent residuals; infinite where the data do not tell the parameter. */
  readonly errors: readonly number[];
  /** What is left over. */
  readonly residuals: Float64Array;
  /** Sum of its squares. */
  readonly sum: number;
}

export interface Bounds {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

const MOST_STEPS = 80;
/** A step that takes less than this share off the sum of squares is the last. */
const CLOSE = 1e-9;
/** Step of a derivative, relative to the parameter (the cube root of the smallest number that adds to 1). */
const DERIVATIVE = 6e-6;

/**
 * The parameters, between their bounds, at which the sum of squared differences is least, from a start that should not be
 * far off. `undefined` where there are not more values than parameters or the curve is not finite at the start.
 * Source: D. W. Marquardt, SIAM J. Appl. Math. 11 (1963) 431-441, with derivatives by central differences; standard errors from the
 * inverse of the normal matrix at the end.
 */
export function leastSquares(
  curve: Curve,
  observed: Float64Array,
  start: readonly number[],
  { low, high }: Bounds,
): LeastSquaresFit | undefined {
  const size = start.length;
  const inside = (values: readonly number[]) =>
    values.map((value, at) => Math.min(Math.max(value, low[at] ?? value), high[at] ?? value));
  let parameters = inside(start);
  let residuals = difference(observed, curve(parameters));
  let sum = squares(residuals);
  if (observed.length <= size || !Number.isFinite(sum)) return undefined;
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS; step++) {
    const slopes = derivatives(curve, parameters);
    const { matrix, vector } = normalEquations(slopes, residuals);
    let gained = false;
    for (; damping < 1e12; damping *= 10) {
      const damped = matrix.map((row, i) =>
        row.map((value, j) => (i === j ? value * (1 + damping) || damping : value)),
      );
      const change = solve(damped, vector);
      const next = inside(parameters.map((value, at) => value + (change?.[at] ?? 0)));
      const left = difference(observed, curve(next));
      const sumThere = squares(left);
      if (!(sumThere < sum)) continue;
      gained = sum - sumThere > CLOSE * sum;
      [parameters, residuals, sum] = [next, left, sumThere];
      damping = Math.max(damping / 10, 1e-15);
      break;
    }
    if (!gained) break;
  }
  return { parameters, errors: standardErrors(derivatives(curve, parameters), sum), residuals, sum };
}

function derivatives(curve: Curve, parameters: readonly number[]): readonly Float64Array[] {
  return parameters.map((value, at) => {
    const step = Math.max(Math.abs(value), 1e-3) * DERIVATIVE;
    const moved = (by: number) => parameters.map((other, index) => (index === at ? value + by : other));
    const above = curve(moved(step));
    const below = curve(moved(-step));
    return above.map((up, index) => (up - (below[index] ?? up)) / (2 * step));
  });
}

function normalEquations(slopes: readonly Float64Array[], residuals: Float64Array) {
  const matrix = slopes.map((a) => slopes.map((b) => dot(a, b)));
  return { matrix, vector: slopes.map((a) => dot(a, residuals)) };
}

function standardErrors(slopes: readonly Float64Array[], sum: number): readonly number[] {
  const { matrix } = normalEquations(slopes, new Float64Array(slopes[0]?.length ?? 0));
  const degrees = (slopes[0]?.length ?? 0) - slopes.length;
  const variance = sum / degrees;
  return matrix.map((_, at) => {
    const column = solve(
      matrix,
      matrix.map((_row, index) => (index === at ? 1 : 0)),
    );
    const inverse = column?.[at] ?? Number.NaN;
    return inverse >= 0 ? Math.sqrt(variance * inverse) : Number.POSITIVE_INFINITY;
  });
}

/** Gauss's elimination with pivots, rows scaled by the diagonal first; `undefined` for a matrix without an inverse. */
function solve(matrix: readonly (readonly number[])[], vector: readonly number[]): number[] | undefined {
  const scale = matrix.map((row, at) => 1 / Math.sqrt(Math.abs(row[at] ?? 0) || 1));
  const s = (at: number) => scale[at] ?? 1;
  const rows = matrix.map((row, i) => [
    ...row.map((value, j) => value * s(i) * s(j)),
    (vector[i] ?? 0) * s(i),
  ]);
  const size = rows.length;
  for (let at = 0; at < size; at++) {
    let best = at;
    for (let i = at + 1; i < size; i++) {
      if (Math.abs(rows[i]?.[at] ?? 0) > Math.abs(rows[best]?.[at] ?? 0)) best = i;
    }
    const pivot = rows[best];
    const here = rows[at];
    if (pivot === undefined || here === undefined || !(Math.abs(pivot[at] ?? 0) > 1e-14)) return undefined;
    [rows[at], rows[best]] = [pivot, here];
    for (let i = 0; i < size; i++) {
      const row = rows[i];
      const share = (row?.[at] ?? 0) / (pivot[at] ?? 1);
      if (row === undefined || i === at || share === 0) continue;
      for (let j = at; j <= size; j++) row[j] = (row[j] ?? 0) - share * (pivot[j] ?? 0);
    }
  }
  return rows.map((row, at) => ((row[size] ?? 0) / (row[at] ?? 1)) * s(at));
}

function difference(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, at) => value - (b[at] ?? Number.NaN));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

function squares(values: Float64Array): number {
  return dot(values, values);
}
