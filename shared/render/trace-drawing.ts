// A panel of a trace while it is being drawn: what stands in it over time, and the labels that still look for room.
import type { AreaStep, TraceResult } from "../model/trace-result.ts";
import { fromSI } from "../quantity/unit.ts";
import type { DrawnPanel } from "./chart-frame.ts";
import type { Box } from "./chart-labels.ts";
import type { Json } from "./chart-layers.ts";
import { type LabelWish, labelRows, labelWish, type Plot, px } from "./chart-plot.ts";
import type { ChartTheme } from "./chart-theme.ts";
import type { TraceUnits } from "./trace-units.ts";
import type { WantedUnits } from "./wanted-units.ts";

export const SOLID = [1, 0];
const DASHED = [5, 3];

export interface TraceDrawing extends Plot {
  readonly result: TraceResult;
  readonly units: TraceUnits;
  readonly wanted: WantedUnits;
  readonly theme: ChartTheme;
  /** What labels should keep off. */
  readonly obstacles: Box[];
  /** What no label may cover: where the area steps. */
  readonly kept: Box[];
  readonly wishes: LabelWish[];
  /** What lines are counted in. */
  readonly block: string;
  /** What leads from a sample to its line, by its time in s; nothing where the samples stand in a log. */
  readonly placeOf: (time: number | undefined) => Json;
}

/** A panel of a trace; `indent` is told when it is put below the others. */
export interface TracePanel {
  readonly panel: Omit<DrawnPanel["panel"], "indent">;
  readonly data: DrawnPanel["data"];
}

/** An upright line at each step of the apparent area. */
export function stepMarks(drawing: TraceDrawing): readonly Json[] {
  const { result, units, theme, y, height, kept } = drawing;
  return result.steps.map(({ time, kind }) => {
    const at = fromSI(time, units.time);
    kept.push({ left: px(drawing, at) - 2, top: 0, width: 4, height });
    const color = kind === "let-go" ? theme.series[1] : theme.series[2];
    return { x: at, x2: at, y: y.low, y2: y.high, color, width: 1.4, dash: DASHED };
  });
}

/** A sign on the line where something happened at a time, in words; it leads to the sample, or to the trace. */
export function eventMark(
  { result, units, theme, placeOf, block }: TraceDrawing,
  time: number,
  y: number,
  kind: "settled" | AreaStep["kind"],
  about: string,
): Json {
  const { shape, color } = {
    settled: { shape: "circle", color: theme.text },
    "let-go": { shape: "triangle-down", color: theme.series[1] },
    "re-attached": { shape: "triangle-up", color: theme.series[2] },
  }[kind];
  const at = result.samples.time.findLast((each) => each <= time);
  return {
    ...{ x: fromSI(time, units.time), y, shape, size: 60, color, fill: theme.background, width: 1.6, about },
    ...{ run: block, line: 0 },
    ...placeOf(at),
  };
}

/** A ground under the stretch that is steady. */
export function steadyShade({ result: { steady }, units, theme, y }: TraceDrawing): readonly Json[] {
  if (steady === undefined) return [];
  const [x, x2] = [steady.from, steady.to].map((time) => fromSI(time, units.time));
  return [{ x, x2, y: y.low, y2: y.high, fill: theme.grid }];
}

/** A label on either side of an upright mark, at one of the tops, in the first of its forms that has room. */
export function wishBeside(
  drawing: TraceDrawing,
  at: number,
  forms: readonly [string, ...string[]],
  tops: readonly number[],
): void {
  const edge = px(drawing, at);
  drawing.obstacles.push({ left: edge - 1, top: 0, width: 2, height: drawing.height });
  drawing.wishes.push(
    labelWish(forms, drawing.theme.text, (width) =>
      tops.flatMap(
        (top) =>
          [
            [edge + 6, top],
            [edge - 6 - width, top],
          ] as const,
      ),
    ),
  );
}

export function traceLabels(drawing: TraceDrawing): readonly Json[] {
  return labelRows(drawing, drawing.wishes, drawing.obstacles, drawing.kept);
}
