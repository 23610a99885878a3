// The upper panel of a trace: depression on time, the band around the target, and when it had settled.
import { fromSI } from "../quantity/unit.ts";
import { type Json, lines, pieces, rectangles, ring, symbols, texts } from "./chart-layers.ts";
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
import { traceFacts } from "./trace-facts.ts";
import { drawnSamples, fitLine, sampleDots, sampleLine } from "./trace-line.ts";

export function depressionPanel(drawing: TraceDrawing): TracePanel {
  const { result, units, wanted, theme, x, y, width, height } = drawing;
  const { samples, setup, settling } = result;
  const target = setup.target.value.value;
  const inUnit = (value: number) => fromSI(value, units.depression);
  const [low, high] = [inUnit(target - setup.within.value), inUnit(target + setup.within.value)];
  const edge = { x: x.low, x2: x.high, color: theme.axis, width: 1, dash: SOLID };
  const marks: Json[] = [
    ...[low, high].map((level) => ({ ...edge, y: level, y2: level })),
    ...stepMarks(drawing),
  ];
  const events: Json[] = [];
  if (settling !== undefined) {
    const last = samples.time.findLastIndex((time) => time <= settling.time);
    const level = clamped(y, inUnit(samples.depression[last] ?? target));
    const [fact] = traceFacts(result, wanted).filter(({ label }) => label === "settled");
    events.push(eventMark(drawing, settling.time, level, "settled", `settled ${fact?.words}`));
    const at = fromSI(settling.time, units.time);
    marks.push({ x: at, x2: at, y: y.low, y2: low, color: theme.quiet, width: 1, dash: [2, 2] });
    wishBeside(
      drawing,
      at,
      [`settled ${trimmed(at)} ${units.time.symbol}`, "settled"],
      [height - 24, height - 44, height * 0.6],
    );
  }
  const drawn = drawnSamples(drawing, samples.depression, inUnit);
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: `Depression, ${units.depression.symbol}`,
      layers: [
        rectangles("depression-bands"),
        pieces("depression-marks"),
        lines("depression-lines"),
        lines("depression-fit"),
        symbols("depression-samples", "pointed"),
        symbols("depression-events", "all"),
        ring("depression-samples", theme),
        texts("depression-labels"),
      ],
    },
    data: {
      "depression-bands": steadyShade(drawing),
      "depression-marks": marks,
      "depression-lines": sampleLine(drawn, drawing),
      "depression-samples": sampleDots(drawn, drawing, units.depression),
      "depression-events": events,
      "depression-fit": fitLine(drawing, inUnit),
      "depression-labels": traceLabels(drawing),
    },
  };
}

function trimmed(value: number): string {
  return String(Number(value.toPrecision(3)));
}
