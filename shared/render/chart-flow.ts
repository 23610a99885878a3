// The main panel of a chart: corrected flow on lift, where it falls back, and what is odd about a point.
import { liftOfThroat } from "../calc/port-areas.ts";
import type { FallBack } from "../model/result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { endLabels } from "./chart-end-labels.ts";
import { type ChartFrame, type DrawnPanel, lineRows, type StyledRun } from "./chart-frame.ts";
import { type Box, boxesAlong, placeLabels, type Wish } from "./chart-labels.ts";
import { type Json, LABEL_SIZE, lines, pieces, rectangles, ring, symbols, texts } from "./chart-layers.ts";
import { isFlagged, onLiftAxis, type RunPoint } from "./chart-run.ts";
import { type ChartScale, chartScale, clamped, fromPixels, toPixels } from "./chart-scale.ts";
import { DOTTED } from "./chart-style.ts";
import { textWidth } from "./chart-text.ts";
import { flowConditions } from "./chart-words.ts";

const TICKS = 6;
const SOLID = [1, 0];
const CROSS = "M-0.6,-0.6L0.6,0.6M-0.6,0.6L0.6,-0.6";
/** Bars of more runs than this would hide each other. */
const MOST_BARRED = 2;
/** From so many points on, symbols are drawn smaller. */
const MANY_POINTS = 30;
/** More points than this no one listens to; a table says them better. */
const MOST_TOLD = 2000;
/** A bar or an expected flow may stretch the axis by this much over the points. */
const STRETCH = 1.15;
/** Half a bar, in pixels, that shows beyond a symbol. */
const LEAST_BAR = 4.5;
const LABEL_HEIGHT = LABEL_SIZE + 3;
/** More labels inside the plot than this say nothing, and finding room for them takes long. */
const MOST_LABELS = 60;

/** Everything inside the panel, while it is being drawn. */
interface Drawing {
  readonly frame: ChartFrame;
  readonly height: number;
  readonly y: ChartScale;
  readonly data: Record<string, Json[]>;
  readonly wishes: (Wish & { readonly text: string; readonly color: string })[];
  readonly obstacles: Box[];
}

/** The panel, `height` pixels high. */
export function flowPanel(frame: ChartFrame, height: number): DrawnPanel {
  const { x, width, left, axes, lead, theme } = frame;
  const y = flowScale(frame);
  const count = frame.runs.reduce((sum, { points }) => sum + points.length, 0);
  const told = count > MOST_TOLD ? "pointed" : "all";
  const data = {
    falls: [],
    reach: [reach(frame, y)],
    marks: [],
    bars: [],
    caps: [],
    "flow-lines": [],
    crosses: [],
    points: [],
    labels: [],
  };
  const drawing: Drawing = { frame, height, y, data, wishes: [], obstacles: [] };
  drawFalls(drawing);
  drawThroat(drawing);
  drawExpectations(drawing);
  for (const [index, run] of frame.runs.entries()) {
    drawLines(drawing, run, index);
    drawPoints(drawing, run);
  }
  drawLabels(drawing);
  const ends = endLabels(frame, y, height);
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: `Corrected flow, ${axes.flow.symbol} ${flowConditions(lead.setup)}`,
      indent: left,
      layers: [
        rectangles("reach"),
        rectangles("falls"),
        pieces("marks"),
        pieces("bars"),
        symbols("caps", "none"),
        lines("flow-lines"),
        symbols("crosses", told),
        symbols("points", told),
        ring("crosses", theme),
        ring("points", theme),
        pieces("leaders"),
        symbols("keys", "none"),
        texts("labels"),
      ],
    },
    data: {
      ...data,
      leaders: ends.leaders,
      keys: ends.keys,
      labels: [...data.labels, ...ends.labels],
    },
  };
}

/** Nothing to see: holds the picture to its width, whatever the texts in its margins are. */
function reach({ x, width, left, right }: ChartFrame, y: ChartScale): Json {
  const at = (pixels: number) => fromPixels(x, width, pixels);
  // A little less than all: the size of a picture is rounded up.
  return { x: at(0.25 - left), x2: at(width + right - 0.25), y: y.low, y2: y.low, fill: "transparent" };
}

/** The runs whose points carry bars. */
export function barredRuns(runs: readonly StyledRun[], lead: ChartFrame["lead"]): readonly StyledRun[] {
  return runs.length <= MOST_BARRED
    ? runs
    : runs.filter(({ run }) => run.result === lead && run.role === "main");
}

/** From zero to above the highest point that took part in means; what lies beyond is drawn at the edge. */
export function flowScale({ runs, lead, axes }: Pick<ChartFrame, "runs" | "lead" | "axes">): ChartScale {
  const all = runs.flatMap(({ points }) => points);
  const usable = all.filter((point) => point.usable);
  const values = (usable.length > 0 ? usable : all).map((point) => point.y);
  const highest = largest(values);
  const lowest = -largest(values.map((value) => -value));
  const wanted = [
    ...all.filter((point) => point.usable || point.void).flatMap(({ y, bar }) => [y, ...(bar ?? [])]),
    ...lead.setup.run.expectations.flatMap(({ flow }) => fromSI(flow.value, axes.flow)),
  ].filter((value) => value <= highest * STRETCH && value >= lowest);
  return chartScale([0, ...values, ...wanted], TICKS, true);
}

/** The largest of the values, at least 0. */
function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, value), 0);
}

function px({ frame }: Drawing, x: number): number {
  return toPixels(frame.x, frame.width, x);
}

/** Pixels from the top. */
function py({ y, height }: Drawing, flow: number): number {
  return height - toPixels(y, height, flow);
}

// --- the port ---------------------------------------------------------------------------------------------

function drawFalls(drawing: Drawing): void {
  const { frame, y, data, height } = drawing;
  const { lead, axes, theme } = frame;
  for (const fall of frame.leads ? lead.fallBacks : []) {
    const from = onLiftAxis(lead, axes, fall.onset.lift);
    const to = onLiftAxis(lead, axes, (fall.recovery ?? fall.last).lift);
    if (from === undefined || to === undefined) continue;
    const level = fromSI(fall.onset.flow, axes.flow);
    const fill = fall.resolved ? theme.fallBack : theme.unresolved;
    const color = fall.resolved ? theme.text : theme.quiet;
    data["falls"]?.push({ x: from, x2: to, y: y.low, y2: y.high, fill });
    data["marks"]?.push({ x: from, x2: to, y: level, y2: level, color: theme.axis, width: 1, dash: [2, 2] });
    for (const edge of [from, to]) {
      drawing.obstacles.push(...boxesAlong(px(drawing, edge), 0, px(drawing, edge), height));
    }
    const text = fallLabel(fall);
    const width = textWidth(text, LABEL_SIZE);
    const middle = (px(drawing, from) + px(drawing, to)) / 2;
    const left = Math.min(Math.max(middle - width / 2, 4), frame.width - width - 4);
    const tops = rows(height - LABEL_HEIGHT - 8, 4);
    wish(
      drawing,
      text,
      color,
      tops.map((top) => [left, top]),
    );
  }
}

/** Depth of a fall-back in per cent; one that chance may have made says so. */
function fallLabel({ depth, resolved }: FallBack): string {
  const percent = `${formatFixed(depth * 100, 1)} %`;
  return resolved ? `falls back ${percent}` : `${percent}? not resolved`;
}

/** Tops from the lowest upwards, one label apart. */
function rows(lowest: number, highest: number): number[] {
  const tops: number[] = [];
  for (let top = lowest; top >= highest; top -= LABEL_HEIGHT + 4) tops.push(top);
  return tops;
}

function drawThroat(drawing: Drawing): void {
  const { frame, y, data, height } = drawing;
  const { lead, axes, theme, x } = frame;
  const lift = lead.setup.port && liftOfThroat(lead.setup.port);
  const at = lift === undefined ? undefined : onLiftAxis(lead, axes, lift);
  if (at === undefined || at <= x.low || at >= x.high) return;
  data["marks"]?.push({ x: at, x2: at, y: y.low, y2: y.high, color: theme.axis, width: 1, dash: [1, 3] });
  drawing.obstacles.push(...boxesAlong(px(drawing, at), 0, px(drawing, at), height));
  const text = "throat limits from here";
  const width = textWidth(text, LABEL_SIZE);
  const edge = px(drawing, at);
  const corners = rows(height - LABEL_HEIGHT - 8, 4).flatMap(
    (top) =>
      [
        [edge + 6, top],
        [edge - 6 - width, top],
      ] as const,
  );
  wish(drawing, text, theme.quiet, corners);
}

function drawExpectations(drawing: Drawing): void {
  const { frame, y, data } = drawing;
  const { lead, axes, theme, x } = frame;
  for (const { lift, flow, within } of frame.leads ? lead.setup.run.expectations : []) {
    const at = onLiftAxis(lead, axes, lift.value);
    const target = fromSI(flow.value, axes.flow);
    if (at === undefined || at < x.low || at > x.high || !(target >= y.low && target <= y.high)) continue;
    const [low, high] = [1 - within.value, 1 + within.value].map((share) => clamped(y, target * share));
    const beside = fromPixels(frame.x, frame.width, px(drawing, at) - 10);
    const look = { color: theme.text, width: 1, dash: SOLID };
    data["marks"]?.push({ x: beside, x2: beside, y: low, y2: high, ...look });
    const dash = { shape: "stroke", color: theme.text, fill: theme.text, width: 1.2 };
    data["caps"]?.push({ x: beside, y: target, size: 100, ...dash });
    for (const end of [low, high]) data["caps"]?.push({ x: beside, y: end, size: 20, ...dash });
    const [left, top] = [px(drawing, beside), py(drawing, target)];
    drawing.obstacles.push({ left: left - 6, top: top - 8, width: 12, height: 16 });
    const width = textWidth("target", LABEL_SIZE);
    wish(drawing, "target", theme.text, around(left, top, width, 8));
  }
}

// --- the runs ----------------------------------------------------------------------------------------------

function drawLines(drawing: Drawing, run: StyledRun, index: number): void {
  const { color, dash, width } = run.style;
  for (const { branch, points } of run.lines) {
    const look = { color, width, dash: branch === "falling" ? DOTTED : dash };
    for (const row of lineRows(points, `${index} ${branch}`, look)) drawing.data["flow-lines"]?.push(row);
    for (const [at, point] of points.entries()) {
      const before = points[at - 1];
      if (before === undefined) continue;
      drawing.obstacles.push(
        ...boxesAlong(
          px(drawing, before.x),
          py(drawing, before.y),
          px(drawing, point.x),
          py(drawing, point.y),
        ),
      );
    }
  }
}

function drawPoints(drawing: Drawing, run: StyledRun): void {
  const { frame, data, obstacles } = drawing;
  const { theme, runs, lead } = frame;
  const barred = barredRuns(runs, lead).includes(run);
  const isBaseline = run.run.role === "baseline";
  const size = (run.points.length > MANY_POINTS ? 14 : 32) * (isBaseline ? 0.6 : 1);
  const { color, shape } = run.style;
  for (const point of run.points) {
    const x = clamped(frame.x, point.x);
    const y = clamped(drawing.y, point.y);
    const [left, top] = [px(drawing, x), py(drawing, y)];
    obstacles.push({ left: left - 5, top: top - 5, width: 10, height: 10 });
    const off = x !== point.x || y !== point.y;
    const { id } = run.run.result.setup.run;
    const about = { about: point.about, run: id, line: point.line, point: `${id}:${point.line}` };
    if (point.void) {
      data["crosses"]?.push({
        x,
        y,
        shape: CROSS,
        size: 60,
        color: theme.axis,
        fill: null,
        width: 1.3,
        ...about,
      });
      if (run.run.result === lead) tag(drawing, left, top, tagText(["void"], point, off, frame), theme.quiet);
      continue;
    }
    if (barred && point.bar !== undefined && !off) drawBar(drawing, point, point.bar, color);
    if (!isFlagged(point) && !off) {
      const fill = point.branch === "falling" ? theme.background : color;
      data["points"]?.push({ x, y, shape, size, color, fill, width: 1, ...about });
      continue;
    }
    const fill = theme.background;
    data["points"]?.push({ x, y, shape: "triangle-up", size: 80, color, fill, width: 1.8, ...about });
    if (run.run.result === lead || runs.length <= MOST_BARRED) {
      tag(drawing, left, top, tagText(point.flags, point, off, frame), theme.text);
    }
  }
}

/** A bar that its symbol would hide is left out. */
function drawBar(
  drawing: Drawing,
  { x, y: middle }: RunPoint,
  [low, high]: readonly [number, number],
  color: string,
): void {
  const { y, data, obstacles } = drawing;
  if (py(drawing, middle) - py(drawing, high) < LEAST_BAR) return;
  const ends = [clamped(y, low), clamped(y, high)] as const;
  data["bars"]?.push({ x, x2: x, y: ends[0], y2: ends[1], color, width: 1, dash: SOLID });
  for (const end of [low, high]) {
    if (end === clamped(y, end)) {
      data["caps"]?.push({ x, y: end, shape: "stroke", size: 36, color, fill: color, width: 1 });
    }
  }
  const [left, top] = [px(drawing, x), py(drawing, ends[1])];
  obstacles.push({ left: left - 3, top, width: 6, height: py(drawing, ends[0]) - top });
}

/** The codes of a point, and its value where it lies off the scale. */
function tagText(words: readonly string[], point: RunPoint, off: boolean, { axes }: ChartFrame): string {
  const codes = words.length > 2 ? [...words.slice(0, 2), `${words.length - 2} more`] : words;
  const value = off ? [`off scale: ${formatFixed(point.y, 0)} ${axes.flow.symbol}`] : [];
  return [...codes, ...value].join(", ");
}

function tag(drawing: Drawing, left: number, top: number, text: string, color: string): void {
  const width = textWidth(text, LABEL_SIZE);
  const rightmost = drawing.frame.width - width;
  const corners = [9, 22, 36]
    .flatMap((distance) => around(left, top, width, distance))
    .map(([x, y]) => [Math.max(0, Math.min(x, rightmost)), y] as const);
  wish(drawing, text, color, corners);
}

/** Asks for room for a label; the first ones asked for are served. */
function wish({ wishes }: Drawing, text: string, color: string, corners: Wish["corners"]): void {
  if (text === "" || wishes.length >= MOST_LABELS) return;
  wishes.push({ text, color, width: textWidth(text, LABEL_SIZE), height: LABEL_HEIGHT, corners });
}

/** Corners of a label around a point: below to the right first, where a rising curve leaves room. */
function around(x: number, y: number, width: number, distance: number): (readonly [number, number])[] {
  const [right, left, middle] = [x + distance, x - distance - width, x - width / 2];
  const half = LABEL_HEIGHT / 2;
  return [
    [right, y - half],
    [right, y + 2],
    [middle, y + distance],
    [left, y - LABEL_HEIGHT - 2],
    [left, y - half],
    [middle, y - distance - LABEL_HEIGHT],
    [right, y - LABEL_HEIGHT - 2],
    [left, y + 2],
    [left, y + distance],
  ];
}

function drawLabels({ frame, y, height, data, wishes, obstacles }: Drawing): void {
  const whole = { left: 0, top: 0, width: frame.width, height };
  placeLabels(wishes, obstacles, whole).forEach((box, index) => {
    const wish = wishes[index];
    if (box === undefined || wish === undefined) return;
    data["labels"]?.push({
      x: fromPixels(frame.x, frame.width, box.left),
      y: fromPixels(y, height, height - box.top - box.height / 2),
      text: wish.text,
      color: wish.color,
    });
  });
}
