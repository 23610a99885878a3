// The lines of a trace over time: its samples, thinned, and the fitted approach.
import { isGap } from "../calc/trace/gaps.ts";
import { firstOrder, secondOrder } from "../calc/trace/step-response.ts";
import type { TraceResult } from "../model/trace-result.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { lineRows } from "./chart-frame.ts";
import { boxesAlong } from "./chart-labels.ts";
import type { Json } from "./chart-layers.ts";
import { px, py } from "./chart-plot.ts";
import { clamped } from "./chart-scale.ts";
import { extremes } from "./extremes.ts";
import { shownNumber } from "./shown-number.ts";
import { SOLID, type TraceDrawing } from "./trace-drawing.ts";

/** More pieces of a line would not keep labels off any better. */
const MOST_OBSTACLES = 150;
/** So many stretches of a long trace keep their extremes: at most a thousand points a panel. */
const MOST_BUCKETS = 250;
const DOT = 14;
/** Dots that are nearer to each other than this would be a band, in pixels. */
const LEAST_APART = 7;
/** Points of the fitted curve. */
const CURVE = 200;

/** A sample that is drawn. */
export interface DrawnSample {
  readonly at: number;
  readonly x: number;
  readonly y: number;
}

/** As many samples as the eye can tell apart, with all that stands out; labels keep off the line through them. */
export function drawnSamples(
  drawing: TraceDrawing,
  values: Float64Array,
  inUnit: (value: number) => number,
): readonly DrawnSample[] {
  const { result, units, width, y, obstacles } = drawing;
  const buckets = Math.min(MOST_BUCKETS, Math.max(50, Math.round(width)));
  const samples = extremes(values, 0, values.length, buckets).map((at) => ({
    at,
    x: fromSI(result.samples.time[at] ?? 0, units.time),
    y: clamped(y, inUnit(values[at] ?? 0)),
  }));
  const every = Math.max(1, Math.floor(samples.length / MOST_OBSTACLES));
  for (let at = every; at < samples.length; at += every) {
    const [from, to] = [samples[at - every], samples[at]];
    if (from === undefined || to === undefined || isGapBetween(result, from, to)) continue;
    obstacles.push(
      ...boxesAlong(px(drawing, from.x), py(drawing, from.y), px(drawing, to.x), py(drawing, to.y)),
    );
  }
  return samples;
}

/** The line through the samples; where some are missing there is none. */
export function sampleLine(
  samples: readonly DrawnSample[],
  { result, theme }: TraceDrawing,
): readonly Json[] {
  const look = { color: theme.series[0], width: 1.5, dash: SOLID };
  return unbroken(result, samples).flatMap((stretch, at) => lineRows(stretch, `samples ${at + 1}`, look));
}

function unbroken(result: TraceResult, samples: readonly DrawnSample[]): readonly (readonly DrawnSample[])[] {
  const stretches: DrawnSample[][] = [];
  let before: DrawnSample | undefined;
  for (const sample of samples) {
    const stretch = stretches.at(-1);
    if (before === undefined || stretch === undefined || isGapBetween(result, before, sample))
      stretches.push([sample]);
    else stretch.push(sample);
    before = sample;
  }
  return stretches;
}

function isGapBetween({ samples, interval, gaps }: TraceResult, from: DrawnSample, to: DrawnSample): boolean {
  if (gaps === undefined) return false;
  const times = samples.time.subarray(from.at, to.at + 1);
  return times.some((time, at) => at > 0 && isGap(time - (times[at - 1] ?? time), interval));
}

/** What is pointed at: a dot at each drawn sample, to be seen only where they stand apart. */
export function sampleDots(
  samples: readonly DrawnSample[],
  drawing: TraceDrawing,
  unit: Unit,
): readonly Json[] {
  const { result, units, theme, width } = drawing;
  const isSeen = samples.length * LEAST_APART <= width;
  const color = isSeen ? theme.series[0] : "transparent";
  return samples.map(({ at, x, y }) => ({
    x,
    y,
    shape: "circle",
    size: DOT,
    color,
    fill: color,
    width: 1,
    about: `${shownNumber(x, undefined)} ${units.time.symbol}: ${shownNumber(y, undefined)} ${unit.symbol}`,
    ...drawing.placeOf(result.samples.time[at]),
  }));
}

/** The fitted approach, from its beginning to a little beyond where it has settled. */
export function fitLine(
  { result, units, theme, x }: TraceDrawing,
  inUnit: (value: number) => number,
): readonly Json[] {
  const { approach, settling, samples } = result;
  if (approach === undefined) return [];
  const { deadTime, start, end, timeConstant, naturalFrequency, damping } = approach;
  const from = samples.time[0] ?? 0;
  const last = samples.time[samples.time.length - 1] ?? from;
  const to = Math.min(last, settling === undefined ? last : from + 1.5 * (settling.time - from));
  const points = Array.from({ length: CURVE + 1 }, (_, at) => {
    const time = from + ((to - from) * at) / CURVE;
    const share =
      timeConstant === undefined
        ? secondOrder(time - deadTime.value, naturalFrequency?.value ?? 1, damping?.value ?? 1)
        : firstOrder(time - deadTime.value, timeConstant.value);
    return { x: fromSI(time, units.time), y: inUnit(start.value + (end.value - start.value) * share) };
  });
  const shown = points.filter((point) => point.x >= x.low && point.x <= x.high);
  return lineRows(shown, "fit", { color: theme.text, width: 1, dash: [2, 2] });
}
