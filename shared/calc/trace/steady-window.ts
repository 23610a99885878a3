// Finds the stretch in which the bench holds: no trend in depression or apparent area, and what the means there are worth.
import type { SteadyMean, SteadyWindow, TraceSamples } from "../../model/trace-result.ts";
import { studentQuantile } from "../student.ts";
import { effectiveSize } from "./effective-size.ts";
import { groupMeans, groupSize } from "./groups.ts";

const LEAST_SAMPLES = 5;
const MOST_GROUPS = 500;
/** The window is looked for from these shares of the hold on; what is shorter than a fifth of it is a chance. */
const BEGINNINGS = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8] as const;
/** A trend that moves the depression by less than this share of the band, or the flow by less than this, is none. */
const SHARE_OF_BAND = 0.25;
const LEAST_DRIFT = 0.001;
/** Chance that a trend is seen where there is none, in depression and flow together. */
const FALSE_TRENDS = 0.05;

/**
 * The longest end of the samples from `from` up to `to` without a trend. A trend is a slope that is resolved at 95 % for depression and flow together (Student's t, with the
 * residuals' effective number) and moves the depression by more than a quarter of the band `within` or the flow by more
 * than 0.1 % over the window. `undefined` where there is none of five samples and a fifth of the hold.
 */
export function steadyWindow(
  samples: TraceSamples,
  flow: Float64Array | undefined,
  from: number,
  to: number,
  within: number,
): SteadyWindow | undefined {
  const chance = FALSE_TRENDS / (flow === undefined ? 1 : 2);
  for (const share of BEGINNINGS) {
    const first = from + Math.floor(share * (to - from));
    if (to - first < LEAST_SAMPLES) return undefined;
    const { time, depression } = samples;
    if (hasTrend(time, depression, first, to, chance, () => SHARE_OF_BAND * within)) continue;
    if (flow !== undefined && hasTrend(time, flow, first, to, chance, (mean) => LEAST_DRIFT * mean)) continue;
    const ofDepression = steadyMean(depression, first, to);
    const ofFlow = flow && steadyMean(flow, first, to);
    if (ofDepression === undefined) continue;
    return {
      from: time[first] ?? 0,
      to: time[to - 1] ?? 0,
      samples: to - first,
      depression: ofDepression,
      ...(ofFlow && { flow: ofFlow }),
    };
  }
  return undefined;
}

function hasTrend(
  time: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
  chance: number,
  least: (mean: number) => number,
): boolean {
  const size = groupSize(to - from, MOST_GROUPS);
  const x = groupMeans(time, from, to, size);
  const y = groupMeans(values, from, to, size);
  const used = y.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  if (used < LEAST_SAMPLES) return false;
  const mean = (column: Float64Array) =>
    column.reduce((sum, value, at) => sum + (Number.isNaN(y[at]) ? 0 : value), 0) / used;
  const [middle, level] = [mean(x), mean(y)];
  let xx = 0;
  let xy = 0;
  y.forEach((value, at) => {
    if (Number.isNaN(value)) return;
    xx += ((x[at] ?? 0) - middle) ** 2;
    xy += ((x[at] ?? 0) - middle) * (value - level);
  });
  const slope = xy / xx;
  const moved = Math.abs(slope) * ((x[x.length - 1] ?? 0) - (x[0] ?? 0));
  if (!(moved > least(Math.abs(level)))) return false;
  const left = y.map((value, at) => value - level - slope * ((x[at] ?? 0) - middle)).filter(Number.isFinite);
  const variance = left.reduce((sum, value) => sum + value * value, 0) / (left.length - 2);
  const effective = Math.max(3, effectiveSize(left));
  const error = Math.sqrt((variance / xx) * (left.length / effective));
  return Math.abs(slope) > (studentQuantile(1 - chance / 2, effective - 2) ?? 2) * error;
}

/** The mean of the samples that are numbers, and its error with neighbours that hang together counted as fewer. */
function steadyMean(values: Float64Array, from: number, to: number): SteadyMean | undefined {
  const used = values.subarray(from, to).filter(Number.isFinite);
  const [first] = used;
  if (first === undefined || used.length < 2) return undefined;
  // A display that stands still: what rounding makes of its mean is no scatter.
  if (used.every((value) => value === first))
    return { mean: first, scatter: 0, effective: used.length, error: 0 };
  const mean = used.reduce((sum, value) => sum + value, 0) / used.length;
  const variance = used.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (used.length - 1);
  const groups = groupMeans(used, 0, used.length, groupSize(used.length, MOST_GROUPS));
  const ofGroups =
    groups.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, groups.length - 1);
  const worth = ofGroups > 0 ? (variance * effectiveSize(groups)) / ofGroups : used.length;
  const effective = Math.min(used.length, Math.max(1, worth));
  return { mean, scatter: Math.sqrt(variance), effective, error: Math.sqrt(variance / effective) };
}
