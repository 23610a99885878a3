// Draws a trace as a Vega-Lite picture: depression and apparent area on time, with what was found in them.
import { firstOrder, secondOrder } from "../calc/trace/step-response.ts";
import type { AreaStep, TraceResult } from "../model/trace-result.ts";
import { decimalsFor, formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { captionPanel } from "./chart-caption.ts";
import { lineRows } from "./chart-frame.ts";
import { type Box, boxesAlong, placeLabels, type Wish } from "./chart-labels.ts";
import {
  AXIS_SIZE,
  type Json,
  LABEL_SIZE,
  lines,
  type Panel,
  panelSpec,
  pieces,
  rectangles,
  strongRows,
  texts,
} from "./chart-layers.ts";
import { type ChartScale, chartScale, fromPixels, tickText, toPixels } from "./chart-scale.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText, textWidth } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { extremes } from "./extremes.ts";
import { quantityWords } from "./run-facts.ts";
import { titleOf } from "./table-blocks.ts";
import { approachWords } from "./trace-facts.ts";
import { type TraceUnits, traceUnits } from "./trace-units.ts";

const TICKS = 5;
const TIME_TICK = 90;
const SOLID = [1, 0];
const DASHED = [5, 3];
/** Below this share of the target the area is noise of the depression; it is not drawn. */
const LEAST_DRAWN = 0.2;
const LABEL_HEIGHT = LABEL_SIZE + 3;
const RIGHT = 16;
/** More pieces of a line would not keep labels off any better. */
const MOST_OBSTACLES = 150;
/** So many values tell how far an axis must go. */
const MOST_RANKED = 20_000;
/** Points of the fitted curve. */
const CURVE = 200;

export interface TraceChartOptions {
  /** Of the whole picture, in pixels. */
  readonly width?: number;
  readonly theme?: ChartTheme;
}

interface Drawing {
  readonly result: TraceResult;
  readonly units: TraceUnits;
  readonly theme: ChartTheme;
  readonly x: ChartScale;
  readonly y: ChartScale;
  readonly width: number;
  readonly height: number;
  /** What labels should keep off. */
  readonly obstacles: Box[];
  readonly wishes: (Wish & { readonly text: string; readonly color: string })[];
}

/** The picture of a trace; one that cannot be used says so. */
export function traceChart(result: TraceResult, options: TraceChartOptions = {}): VegaLiteSpec {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const inner = outer - 2 * PADDING;
  const { trace, setup, samples, interval, approach } = result;
  const title = cleanText(titleOf("trace", trace.lift, setup.run.id));
  if (interval === 0) return emptyChart("No sample of this trace can be used", title, outer, theme);
  const units = traceUnits(result);
  const inTime = (time: number) => fromSI(time, units.time);
  const pressures = drawnPressures(result, units);
  const areas = drawnAreas(result, units);
  const left = leftMargin([pressures.scale, ...(areas === undefined ? [] : [areas.scale])]);
  const width = inner - left - RIGHT;
  const last = samples.time[samples.time.length - 1] ?? 1;
  const x = chartScale([Math.min(0, inTime(samples.time[0] ?? 0)), inTime(last)], width / TIME_TICK, false);
  const frame = { result, units, theme, x, width };
  const panels = [
    depressionPanel({
      ...frame,
      y: pressures.scale,
      height: Math.round(Math.min(300, Math.max(150, width * 0.36))),
      obstacles: [],
      wishes: [],
    }),
    ...(areas === undefined
      ? []
      : [
          areaPanel({
            ...frame,
            y: areas.scale,
            height: Math.round(Math.min(240, Math.max(130, width * 0.3))),
            obstacles: [],
            wishes: [],
          }),
        ]),
  ];
  const notes = notesOf(result);
  const caption = captionPanel({ left, theme, width }, notes, notes, inner);
  const facts = [
    ...(setup.bench === undefined ? [] : [`bench ${setup.bench.id}`]),
    ...(setup.port === undefined ? [] : [`port ${setup.port.id}`]),
    ...(approach === undefined ? [] : [approachWords(approach, units)]),
  ];
  const data = [...panels, caption].flatMap((panel) => Object.entries(panel.data));
  return {
    ...shellOf(title, cleanText(facts.join("; ")), outer, left, theme),
    datasets: Object.fromEntries(data.map(([name, rows]) => [name, strongRows(rows, theme)])),
    vconcat: [
      ...panels.map(({ panel }, index) =>
        panelSpec(
          {
            ...panel,
            indent: left,
            ...(index === panels.length - 1 && { lift: `Time since opening, ${units.time.symbol}` }),
          },
          theme,
        ),
      ),
      caption.spec,
    ],
  };
}

interface DrawnPanel {
  readonly panel: Omit<Panel, "indent">;
  readonly data: Readonly<Record<string, readonly Json[]>>;
}

function depressionPanel(drawing: Drawing): DrawnPanel {
  const { result, units, theme, x, y, width, height } = drawing;
  const { samples, setup, settling, approach } = result;
  const target = setup.target.value.value;
  const inUnit = (value: number) => fromSI(value, units.depression);
  const band = [target - setup.within.value, target + setup.within.value].map(inUnit);
  const [low = 0, high = 0] = band;
  const color = theme.series[0];
  const edge = { x: x.low, x2: x.high, color: theme.axis, width: 1, dash: SOLID };
  const marks: Json[] = [low, high].map((level) => ({ ...edge, y: level, y2: level }));
  drawSteps(drawing, marks);
  if (settling !== undefined) {
    const at = fromSI(settling.time, units.time);
    marks.push({ x: at, x2: at, y: y.low, y2: low, color: theme.quiet, width: 1, dash: [2, 2] });
    wishBeside(drawing, at, `settled ${trimmed(at)} ${units.time.symbol}`, theme.text, [
      height - 24,
      height - 44,
      height * 0.6,
    ]);
  }
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
        texts("depression-labels"),
      ],
    },
    data: {
      "depression-bands": steadyShade(drawing),
      "depression-marks": marks,
      "depression-lines": sampled(drawing, samples.depression, inUnit, "depression", color),
      "depression-fit": approach === undefined ? [] : fitRows(drawing, inUnit),
      "depression-labels": placed(drawing),
    },
  };
}

function areaPanel(drawing: Drawing): DrawnPanel {
  const { result, units, theme, x, y, width, height } = drawing;
  const { samples, flow = new Float64Array(0), areaFactor, setup, steady, steps } = result;
  const least = LEAST_DRAWN * setup.target.value.value;
  const inUnit = (value: number) => fromSI(value * areaFactor, units.area);
  const shown = flow.map((value, at) => ((samples.depression[at] ?? 0) >= least ? value : Number.NaN));
  const marks: Json[] = [];
  drawSteps(drawing, marks);
  for (const step of steps) {
    const at = fromSI(step.time, units.time);
    const tops = [height - 24, height - 42, 6, 24, height / 2];
    wishBeside(drawing, at, stepLabel(step), theme.text, tops);
  }
  if (steady?.flow !== undefined) {
    const level = inUnit(steady.flow.mean);
    const [from, to] = [steady.from, steady.to].map((time) => fromSI(time, units.time));
    marks.push({ x: from, x2: to, y: level, y2: level, color: theme.text, width: 1.2, dash: SOLID });
    const decimals = decimalsFor(steady.flow.error / units.flow.factor) ?? 1;
    const mean = formatFixed(fromSI(steady.flow.mean, units.flow), decimals);
    const error = formatFixed(steady.flow.error / units.flow.factor, decimals);
    const text = `steady: ${mean} ± ${error} ${units.flow.symbol}`;
    const labelWidth = textWidth(text, LABEL_SIZE);
    const right = Math.min(width - 4, toPixels(x, width, to ?? 0)) - labelWidth;
    const top = height - toPixels(y, height, level);
    drawing.obstacles.push({ left: right, top: top - 2, width: labelWidth, height: 4 });
    wish(drawing, text, theme.text, [
      [right, top + 10],
      [right, top - LABEL_HEIGHT - 10],
      [right, 4],
      [right, height - 20],
    ]);
  }
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: `Apparent area, ${units.area.symbol}`,
      layers: [rectangles("area-bands"), lines("area-lines"), pieces("area-marks"), texts("area-labels")],
    },
    data: {
      "area-bands": steadyShade(drawing),
      "area-marks": marks,
      "area-lines": sampled(drawing, shown, inUnit, "area", theme.series[0]),
      "area-labels": placed(drawing),
    },
  };
}

/** `lets go: -5.9 %`. */
function stepLabel({ kind, size, error }: AreaStep): string {
  const decimals = Math.min(1, decimalsFor(error * 100) ?? 1);
  const percent = formatFixed(size * 100, decimals);
  return kind === "let-go" ? `lets go: -${percent} %` : `back: +${percent} %`;
}

function drawSteps({ result, units, theme, y }: Drawing, marks: Json[]): void {
  for (const { time, kind } of result.steps) {
    const at = fromSI(time, units.time);
    const color = kind === "let-go" ? theme.series[1] : theme.series[2];
    marks.push({ x: at, x2: at, y: y.low, y2: y.high, color, width: 1.4, dash: DASHED });
  }
}

function steadyShade({ result: { steady }, units, theme, y }: Drawing): readonly Json[] {
  if (steady === undefined) return [];
  const [x, x2] = [steady.from, steady.to].map((time) => fromSI(time, units.time));
  return [{ x, x2, y: y.low, y2: y.high, fill: theme.grid }];
}

/** The line of the samples, as many points as the eye can tell apart. */
function sampled(
  { result: { samples }, units, width, y, x, height, obstacles }: Drawing,
  values: Float64Array,
  inUnit: (value: number) => number,
  series: string,
  color: string,
): readonly Json[] {
  const points = extremes(values, 0, values.length, Math.max(50, Math.round(width))).map((at) => ({
    x: fromSI(samples.time[at] ?? 0, units.time),
    y: Math.min(y.high, Math.max(y.low, inUnit(values[at] ?? 0))),
  }));
  const every = Math.max(1, Math.floor(points.length / MOST_OBSTACLES));
  for (let at = every; at < points.length; at += every) {
    const [from, to] = [points[at - every], points[at]];
    if (from === undefined || to === undefined) continue;
    obstacles.push(
      ...boxesAlong(
        toPixels(x, width, from.x),
        height - toPixels(y, height, from.y),
        toPixels(x, width, to.x),
        height - toPixels(y, height, to.y),
      ),
    );
  }
  return lineRows(points, series, { color, width: 1.5, dash: SOLID });
}

function fitRows({ result, units, theme, x }: Drawing, inUnit: (value: number) => number): readonly Json[] {
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

function drawnPressures({ samples, setup }: TraceResult, units: TraceUnits): { readonly scale: ChartScale } {
  const inUnit = (value: number) => fromSI(value, units.depression);
  let [low, high] = [0, setup.target.value.value + 2 * setup.within.value];
  for (const value of samples.depression) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { scale: chartScale([inUnit(low), inUnit(high)], TICKS, true) };
}

/** From all samples with enough depression; a few stray ones do not stretch the axis. */
function drawnAreas(
  { samples, flow, areaFactor, setup }: TraceResult,
  units: TraceUnits,
): { readonly scale: ChartScale } | undefined {
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
  const values = [low - room, high + room].map((value) => fromSI(value * areaFactor, units.area));
  return { scale: chartScale(values, 4, true) };
}

function leftMargin(scales: readonly ChartScale[]): number {
  const widest = scales.flatMap((scale) =>
    scale.ticks.map((tick) => textWidth(tickText(scale, tick), AXIS_SIZE)),
  );
  return Math.ceil(Math.max(44, 10 + Math.max(0, ...widest)));
}

/** A label on either side of an upright mark, at one of the tops. */
function wishBeside(
  drawing: Drawing,
  at: number,
  text: string,
  color: string,
  tops: readonly number[],
): void {
  const edge = toPixels(drawing.x, drawing.width, at);
  const width = textWidth(text, LABEL_SIZE);
  drawing.obstacles.push({ left: edge - 1, top: 0, width: 2, height: drawing.height });
  const corners = tops.flatMap(
    (top) =>
      [
        [edge + 6, top],
        [edge - 6 - width, top],
      ] as const,
  );
  wish(drawing, text, color, corners);
}

function wish(drawing: Drawing, text: string, color: string, corners: Wish["corners"]): void {
  drawing.wishes.push({ text, color, width: textWidth(text, LABEL_SIZE), height: LABEL_HEIGHT, corners });
}

function placed({ wishes, obstacles, x, y, width, height }: Drawing): readonly Json[] {
  const boxes = placeLabels(wishes, obstacles, [], { left: 0, top: 0, width, height });
  return wishes.flatMap(({ text, color }, at) => {
    const box = boxes[at];
    if (box === undefined) return [];
    const middle = box.top + box.height / 2;
    return [{ x: fromPixels(x, width, box.left), y: fromPixels(y, height, height - middle), text, color }];
  });
}

function notesOf({ setup, approach, steady, steps, flow }: TraceResult): string {
  return [
    `thin lines: the band around ${quantityWords(setup.target.value)}`,
    ...(approach === undefined ? [] : ["dotted: the fitted approach"]),
    ...(steady === undefined ? [] : ["grey: steady"]),
    ...(steps.length === 0 ? [] : ["dashed: the area steps by more than scatter"]),
    ...(flow === undefined ? ["the trace has no flow, so no area"] : []),
  ].join("; ");
}

function trimmed(value: number): string {
  return String(Number(value.toPrecision(3)));
}
