// The main panel of a chart: corrected flow on lift, where it falls back, and what is odd about a point.
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { around, type Drawing, drawLabels, wish } from "./chart-drawing.ts";
import { endLabels } from "./chart-end-labels.ts";
import { type ChartFrame, type DrawnPanel, lineRows, type StyledRun } from "./chart-frame.ts";
import { boxesAlong } from "./chart-labels.ts";
import { type Json, lines, pieces, rectangles, ring, symbols, texts } from "./chart-layers.ts";
import { markOf } from "./chart-mark.ts";
import { drawExpectations, drawFalls, drawFlattenLift } from "./chart-marks.ts";
import { px, py } from "./chart-plot.ts";
import { isFlagged, type RunPoint } from "./chart-run.ts";
import { type ChartScale, chartScale, clamped, fromPixels } from "./chart-scale.ts";
import { DOTTED } from "./chart-style.ts";
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

/** The panel, `height` pixels high. */
export function flowPanel(frame: ChartFrame, height: number): DrawnPanel {
  const { x, width, left, axes, lead, theme } = frame;
  const y = flowScale(frame);
  const count = frame.runs.reduce((sum, { points }) => sum + points.length, 0);
  const told = count > MOST_TOLD ? "pointed" : "all";
  const data = {
    falls: [],
    targets: [],
    reach: [reach(frame, y)],
    marks: [],
    bars: [],
    caps: [],
    "flow-lines": [],
    crosses: [],
    points: [],
    labels: [],
  };
  const drawing: Drawing = { frame, x, y, width, height, data, wishes: [], obstacles: [], kept: [] };
  drawFalls(drawing);
  drawFlattenLift(drawing);
  drawExpectations(drawing);
  for (const [index, run] of frame.runs.entries()) {
    drawLines(drawing, run, index);
    drawPoints(drawing, run);
  }
  nameFalling(drawing);
  drawLabels(drawing);
  const ends = endLabels(frame, y, height, frame.isCrowd ? "highlighted" : "all");
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: `Corrected flow, ${axes.flow.symbol} ${flowConditions(lead.setup, axes.wanted)}`,
      indent: left,
      layers: [
        rectangles("reach"),
        rectangles("falls"),
        rectangles("targets"),
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

/**
 * From zero to above the highest point that took part in means; what lies beyond is drawn at the edge. Of a stretch from
 * the lowest of its points and lines.
 */
export function flowScale({
  runs,
  lead,
  axes,
  isStretch,
}: Pick<ChartFrame, "runs" | "lead" | "axes" | "isStretch">): ChartScale {
  const all = runs.flatMap(({ points }) => points);
  const usable = all.filter((point) => point.usable);
  const points = (usable.length > 0 ? usable : all).map((point) => point.y);
  const lines = isStretch ? runs.flatMap((run) => run.lines.flatMap((line) => line.points)) : [];
  const values = [...points, ...lines.map(({ y }) => y), ...(isStretch ? [] : [0])];
  const highest = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const least = values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
  const lowest = isStretch ? least / STRETCH : least;
  const wanted = [
    ...all.filter((point) => point.usable || point.void).flatMap(({ y, bar }) => [y, ...(bar ?? [])]),
    ...lead.setup.run.expectations.flatMap(({ flow }) => fromSI(flow.value, axes.flow)),
  ].filter((value) => value <= highest * STRETCH && value >= lowest);
  return chartScale([...values, ...wanted], TICKS, true);
}

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
  const { frame, data, kept } = drawing;
  const { theme, runs, lead } = frame;
  const barred = barredRuns(runs, lead).includes(run);
  const size = (run.points.length > MANY_POINTS ? 14 : 32) * (run.style.isContext ? 0.6 : 1);
  const { color, shape } = run.style;
  // What was read on the way down comes first: a wider ring that a point of the way up stands in.
  const ordered = [...run.points].sort((a, b) => Number(isFalling(b)) - Number(isFalling(a)));
  for (const point of ordered) {
    const x = clamped(frame.x, point.x);
    const y = clamped(drawing.y, point.y);
    const [left, top] = [px(drawing, x), py(drawing, y)];
    kept.push({ left: left - 5, top: top - 5, width: 10, height: 10 });
    const off = x !== point.x || y !== point.y;
    const { id } = run.run.result.setup.run;
    const about = { about: point.about, ...markOf(id, point.line) };
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
      const look = isFalling(point) ? { size: 2.2 * size, fill: theme.background } : { size, fill: color };
      data["points"]?.push({ x, y, shape, ...look, color, width: 1.2, ...about });
      continue;
    }
    const fill = theme.background;
    data["points"]?.push({ x, y, shape: "triangle-up", size: 80, color, fill, width: 1.8, ...about });
    if (run.run.result === lead || runs.length <= MOST_BARRED) {
      tag(drawing, left, top, tagText(point.flags, point, off, frame), theme.text);
    }
  }
}

/** Names the dotted branch of the leading run where it begins. */
function nameFalling(drawing: Drawing): void {
  const { frame, y } = drawing;
  const run = frame.leads ? frame.runs.find((entry) => entry.run.result === frame.lead) : undefined;
  const points = run?.lines.find(({ branch }) => branch === "falling")?.points ?? [];
  const start = points.at(-1);
  if (start === undefined || points.length < 2) return;
  const [left, top] = [px(drawing, clamped(frame.x, start.x)), py(drawing, clamped(y, start.y))];
  wish(drawing, ["lift coming down", "down"], frame.theme.quiet, (width) =>
    around(left, top, width, [10, 20, 32]),
  );
}

function isFalling({ branch }: RunPoint): boolean {
  return branch === "falling";
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
  wish(drawing, text === "" ? [] : [text], color, (width) => {
    const rightmost = drawing.frame.width - width;
    return around(left, top, width, [9, 22, 36, 52]).map(([x, y, cost = 0]) => [
      Math.max(0, Math.min(x, rightmost)),
      y,
      cost,
    ]);
  });
}
