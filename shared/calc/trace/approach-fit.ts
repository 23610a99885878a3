// Describes the way up to the depression by a lag of the first or second order behind a dead time.
import type { Approach, Fitted } from "../../model/trace-result.ts";
import { type LeastSquaresFit, leastSquares } from "../least-squares.ts";
import { neighbourCorrelation } from "./effective-size.ts";
import { firstOrder, secondOrder } from "./step-response.ts";

/** Fewer points cannot tell a lag of the second order from one of the first. */
const LEAST_POINTS = 8;
/** Where the approach is taken to have begun when a fit is started, and where one time constant has passed. */
const BEGUN = 0.05;
const ONE_CONSTANT = 1 - Math.exp(-1);
const STARTING_DAMPINGS = [0.5, 1.3] as const;

/**
 * The lag that describes the points best: of the two orders the one with the lower corrected information criterion
 * (C. M. Hurvich and C.-L. Tsai, Biometrika 76 (1989) 297-307). Standard errors count residuals that hang together as
 * fewer. `undefined` for too few points, or a depression that does not rise.
 */
export function approachFit(time: Float64Array, depression: Float64Array): Approach | undefined {
  const guess = time.length < LEAST_POINTS ? undefined : firstGuess(time, depression);
  if (guess === undefined) return undefined;
  const first = best([[guess.start, guess.end, guess.deadTime, guess.timeConstant]], (start) =>
    fitFirst(time, depression, start),
  );
  const second = best(
    STARTING_DAMPINGS.map((damping) => [
      guess.start,
      guess.end,
      guess.deadTime,
      // Both lags reach the same share of their way at about the same time then.
      (1 + damping) / guess.timeConstant,
      damping,
    ]),
    (start) => fitSecond(time, depression, start),
  );
  if (first === undefined) return second && described(second, 2);
  if (second === undefined || criterion(first) <= criterion(second)) return described(first, 1);
  return described(second, 2);
}

function firstGuess(time: Float64Array, depression: Float64Array) {
  const count = depression.length;
  const start = depression[0] ?? 0;
  const tail = depression.subarray(Math.floor(count * 0.9));
  const end = tail.reduce((sum, value) => sum + value, 0) / tail.length;
  if (!(end > start)) return undefined;
  const reached = (share: number) => {
    const at = depression.findIndex((value) => value >= start + share * (end - start));
    return time[Math.max(0, at)] ?? 0;
  };
  const begun = reached(BEGUN);
  const step = ((time[count - 1] ?? 0) - (time[0] ?? 0)) / count;
  return {
    start,
    end,
    deadTime: Math.max(time[0] ?? 0, begun - step),
    timeConstant: Math.max(reached(ONE_CONSTANT) - begun, step),
  };
}

function limits(time: Float64Array) {
  const from = time[0] ?? 0;
  const to = time[time.length - 1] ?? 1;
  return { from, to, long: 100 * (to - from), short: (to - from) / (100 * time.length) };
}

function fitFirst(time: Float64Array, observed: Float64Array, start: readonly number[]) {
  const { from, to, long, short } = limits(time);
  return leastSquares(
    ([low = 0, high = 0, dead = 0, constant = 1]) =>
      time.map((t) => low + (high - low) * firstOrder(t - dead, constant)),
    observed,
    start,
    { low: [-1e9, -1e9, from, short], high: [1e9, 1e9, to, long] },
  );
}

function fitSecond(time: Float64Array, observed: Float64Array, start: readonly number[]) {
  const { from, to, long, short } = limits(time);
  return leastSquares(
    ([low = 0, high = 0, dead = 0, frequency = 1, damping = 1]) =>
      time.map((t) => low + (high - low) * secondOrder(t - dead, frequency, damping)),
    observed,
    start,
    { low: [-1e9, -1e9, from, 1 / long, 0.02], high: [1e9, 1e9, to, 1 / short, 5] },
  );
}

function best(
  starts: readonly (readonly number[])[],
  fitFrom: (start: readonly number[]) => LeastSquaresFit | undefined,
): LeastSquaresFit | undefined {
  let found: LeastSquaresFit | undefined;
  for (const start of starts) {
    const next = fitFrom(start);
    if (next !== undefined && (found === undefined || next.sum < found.sum)) found = next;
  }
  return found;
}

/** Akaike's criterion with the correction for few points; the scatter counts as a parameter too. */
function criterion({ parameters, residuals, sum }: LeastSquaresFit): number {
  const count = residuals.length;
  const known = parameters.length + 1;
  const room = Math.max(count - known - 1, 1e-3);
  return (
    count * Math.log(Math.max(sum, Number.MIN_VALUE) / count) + 2 * known + (2 * known * (known + 1)) / room
  );
}

function described({ parameters, errors, residuals, sum }: LeastSquaresFit, order: 1 | 2): Approach {
  const correlation = Math.min(0.95, Math.max(0, neighbourCorrelation(residuals)));
  const wider = Math.sqrt((1 + correlation) / (1 - correlation));
  const fitted = (at: number): Fitted => ({
    value: parameters[at] ?? Number.NaN,
    error: (errors[at] ?? Number.NaN) * wider,
  });
  return {
    order,
    start: fitted(0),
    end: fitted(1),
    deadTime: fitted(2),
    ...(order === 1 ? { timeConstant: fitted(3) } : { naturalFrequency: fitted(3), damping: fitted(4) }),
    scatter: Math.sqrt(sum / (residuals.length - parameters.length)),
  };
}
