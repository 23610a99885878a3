// How far the axes of a trace go.
import type { TraceResult } from "../model/trace-result.ts";
import { fromSI } from "../quantity/unit.ts";
import { type ChartScale, chartScale } from "./chart-scale.ts";
import type { TraceUnits } from "./trace-units.ts";

/** Below this share of the target the area is noise of the depression; it is not drawn. */
export const LEAST_DRAWN = 0.2;
const PRESSURE_TICKS = 5;
const AREA_TICKS = 4;
/** Pixels from one number of the time axis to the next, about. */
const TIME_TICK = 90;
/** So many values tell how far an axis must go. */
const MOST_RANKED = 20_000;

/** From the opening, or the first sample if it was taken before, over a plot so many pixels wide. */
export function timeScale({ samples }: TraceResult, { time: unit }: TraceUnits, width: number): ChartScale {
  const { time } = samples;
  const [first, last] = [time[0] ?? 0, time[time.length - 1] ?? 1].map((value) => fromSI(value, unit));
  return chartScale([Math.min(0, first ?? 0), last ?? 1], width / TIME_TICK, false);
}

/** All samples and the band around the target. */
export function depressionScale({ samples, setup }: TraceResult, units: TraceUnits): ChartScale {
  let [low, high] = [0, setup.target.value.value + 2 * setup.within.value];
  for (const value of samples.depression) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const ends = [low, high].map((value) => fromSI(value, units.depression));
  return chartScale(ends, PRESSURE_TICKS, true);
}

/** From all samples with enough depression; a few stray ones do not stretch the axis. Nothing where no area can be drawn. */
export function areaScale(
  { samples, flow, areaFactor, setup }: TraceResult,
  units: TraceUnits,
): ChartScale | undefined {
  if (flow === undefined) return undefined;
  const least = 2 * LEAST_DRAWN * setup.target.value.value;
  const every = Math.max(1, Math.floor(flow.length / MOST_RANKED));
  const used = flow
    .filter((value, at) => at % every === 0 && value > 0 && (samples.depression[at] ?? 0) >= least)
    .sort();
  if (used.length < 2) return undefined;
  const at = (share: number) => used[Math.round(share * (used.length - 1))] ?? 0;
  const [low, high] = [at(0.005), at(0.995)];
  const room = Math.max((high - low) * 0.25, high * 0.01);
  const ends = [low - room, high + room].map((value) => fromSI(value * areaFactor, units.area));
  return chartScale(ends, AREA_TICKS, true);
}
