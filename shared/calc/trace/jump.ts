// A step comes at once: its jump stands out among all jumps of its series, whatever way the noise hangs together.
import { normalQuantile } from "../normal.ts";

/** A jump is the mean of some values behind a place less that of as many before it; the place itself may be halfway. */
export function jumpAt(values: Float64Array, at: number, neighbours: number): number {
  return meanOf(values, at + 1, at + 1 + neighbours) - meanOf(values, at - neighbours, at);
}

/** The mean of the values from `from` up to `to`, as far as there are any. */
export function meanOf(values: Float64Array, from: number, to: number): number {
  const [first, end] = [Math.max(0, from), Math.min(values.length, to)];
  let sum = 0;
  for (let at = first; at < end; at++) sum += values[at] ?? 0;
  return sum / (end - first);
}

/** One value in so many on each side of a place, but four at least: longer sides see smaller steps, and take waves for some. */
const ONE_IN = 25;
const LEAST_NEIGHBOURS = 4;
/** The smaller jumps tell the scatter, so that a second step counts for none; and the variance of a normal cut off there. */
const SMALLER = 0.8;
const VARIANCE_OF_SMALLER = 0.43773;

/**
 * Whether the jump at a place stands out at a chance of `level` for any place of the series. `left` is the series with all that is
 * known of it taken out, the step too, which cost it `lost` degrees of freedom; `step` is what the step adds to each value.
 * The scatter of the jumps themselves tells what neighbours that hang together do, so that no model of their noise is
 * needed; as many places count as share no value.
 */
export function standsOut(
  left: Float64Array,
  step: Float64Array,
  at: number,
  lost: number,
  level: number,
): boolean {
  const count = left.length;
  const neighbours = Math.max(LEAST_NEIGHBOURS, Math.round(count / ONE_IN));
  const before = Math.min(neighbours, at);
  const behind = Math.min(neighbours, count - at - 1);
  if (count <= lost || before < 1 || behind < 1) return false;
  // Near an end a jump has fewer values, and scatters by more.
  const wider = Math.sqrt((1 / before + 1 / behind) / (2 / neighbours));
  const deviation = scatterOfJumps(left, neighbours) * Math.sqrt(count / (count - lost)) * wider;
  const separate = Math.max(1, count / (2 * neighbours));
  const limit = normalQuantile(1 - level / 2 / separate) ?? Number.POSITIVE_INFINITY;
  const whole = left.map((value, index) => value + (step[index] ?? 0));
  return Math.abs(jumpAt(whole, at, neighbours)) > limit * deviation;
}

/** Standard deviation of the jumps of a series. */
function scatterOfJumps(values: Float64Array, neighbours: number): number {
  const squares: number[] = [];
  for (let at = neighbours; at + neighbours < values.length; at++)
    squares.push(jumpAt(values, at, neighbours) ** 2);
  squares.sort((a, b) => a - b);
  const smaller = squares.slice(0, Math.ceil(SMALLER * squares.length));
  const mean = smaller.reduce((sum, square) => sum + square, 0) / smaller.length;
  return Math.sqrt(mean / VARIANCE_OF_SMALLER);
}
