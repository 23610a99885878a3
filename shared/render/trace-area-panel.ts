// The lower panel of a trace: apparent area on time, its steady mean, and where it steps.
import { fromSI } from "../quantity/unit.ts";
import type { Corner } from "./chart-labels.ts";
import { type Json, lines, pieces, rectangles, ring, symbols, texts } from "./chart-layers.ts";
import { LABEL_HEIGHT, labelWish, px, py } from "./chart-plot.ts";
import { clamped } from "./chart-scale.ts";
import {
  eventMark,
  SOLID,
  steadyShade,
  stepMarks,
  type TraceDrawing,
  type TracePanel,
  traceLabels,
  wishBeside,
} from "./trace-drawing.ts";
import { steadyWords, stepLabel, stepSize, stepWords } from "./trace-facts.ts";
import { drawnSamples, sampleDots, sampleLine } from "./trace-line.ts";
import { LEAST_DRAWN } from "./trace-scales.ts";

export function areaPanel(drawing: TraceDrawing, flow: Float64Array): TracePanel {
  const { result, units, theme, x, y, width, height } = drawing;
  const { samples, areaFactor, setup, steps } = result;
  const least = LEAST_DRAWN * setup.target.value.value;
  const inUnit = (value: number) => fromSI(value * areaFactor, units.area);
  const shown = flow.map((value, at) => ((samples.depression[at] ?? 0) >= least ? value : Number.NaN));
  const marks = stepMarks(drawing);
  const events: Json[] = [];
  for (const step of steps) {
    const level = clamped(y, inUnit(step.after));
    events.push(
      eventMark(
        drawing,
        step.time,
        level,
        step.kind,
        `${step.kind.replace("let-go", "let go")} ${stepWords(step, units)}`,
      ),
    );
    const tops = [height - 24, height - 42, 6, 24, height / 2];
    wishBeside(drawing, fromSI(step.time, units.time), [stepLabel(step), stepSize(step)], tops);
  }
  const steady = steadyMarks(drawing, inUnit);
  const drawn = drawnSamples(drawing, shown, inUnit);
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: `Apparent area, ${units.area.symbol}`,
      layers: [
        rectangles("area-bands"),
        lines("area-lines"),
        pieces("area-marks"),
        symbols("area-samples", "pointed"),
        symbols("area-events", "all"),
        ring("area-samples", theme),
        texts("area-labels"),
      ],
    },
    data: {
      "area-bands": steadyShade(drawing),
      "area-marks": [...marks, ...steady],
      "area-lines": sampleLine(drawn, drawing),
      "area-samples": sampleDots(drawn, drawing, units.area),
      "area-events": events,
      "area-labels": traceLabels(drawing),
    },
  };
}

/** The mean of the steady stretch, with its value. */
function steadyMarks(drawing: TraceDrawing, inUnit: (flow: number) => number): readonly Json[] {
  const {
    result: { steady },
    units,
    theme,
    width,
    height,
  } = drawing;
  if (steady?.flow === undefined) return [];
  const level = inUnit(steady.flow.mean);
  const [from, to] = [fromSI(steady.from, units.time), fromSI(steady.to, units.time)];
  const [left, right] = [Math.max(0, px(drawing, from)), Math.min(width, px(drawing, to))];
  const top = py(drawing, level);
  drawing.obstacles.push({ left, top: top - 2, width: right - left, height: 4 });
  const value = steadyWords(steady.flow, units.flow);
  drawing.wishes.push(
    labelWish([`steady: ${value}`, value, "steady"], theme.text, (wide) => {
      const tops = [top + 10, top - LABEL_HEIGHT - 10, 4, height - 20];
      const lefts = [right - wide - 4, left + 4];
      return tops.flatMap((each) => lefts.map((at): Corner => [at, each]));
    }),
  );
  return [{ x: from, x2: to, y: level, y2: level, color: theme.text, width: 1.2, dash: SOLID }];
}
