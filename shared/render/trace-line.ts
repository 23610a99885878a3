// The lines of a trace over time: its samples, thinned, and the fitted approach.
import { firstOrder, secondOrder } from "../calc/trace/step-response.ts";
import { fromSI } from "../quantity/unit.ts";
import { lineRows } from "./chart-frame.ts";
import { boxesAlong } from "./chart-labels.ts";
import type { Json } from "./chart-layers.ts";
import { px, py } from "./chart-plot.ts";
import { clamped } from "./chart-scale.ts";
import { extremes } from "./extremes.ts";
import { SOLID, type TraceDrawing } from "./trace-drawing.ts";

/** More pieces of a line would not keep labels off any better. */
const MOST_OBSTACLES = 150;
/** Points of the fitted curve. */
const CURVE = 200;

/** The line of the samples, as many points as the eye can tell apart; labels keep off it. */
export function sampleLine(
  drawing: TraceDrawing,
  values: Float64Array,
  inUnit: (value: number) => number,
): readonly Json[] {
  const { result, units, width, y, obstacles, theme } = drawing;
  const points = extremes(values, 0, values.length, Math.max(50, Math.round(width))).map((at) => ({
    x: fromSI(result.samples.time[at] ?? 0, units.time),
    y: clamped(y, inUnit(values[at] ?? 0)),
  }));
  const every = Math.max(1, Math.floor(points.length / MOST_OBSTACLES));
  for (let at = every; at < points.length; at += every) {
    const [from, to] = [points[at - every], points[at]];
    if (from === undefined || to === undefined) continue;
    obstacles.push(
      ...boxesAlong(px(drawing, from.x), py(drawing, from.y), px(drawing, to.x), py(drawing, to.y)),
    );
  }
  return lineRows(points, "samples", { color: theme.series[0], width: 1.5, dash: SOLID });
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
