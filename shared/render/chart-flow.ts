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
import { LABEL_HEIGHT, type Place, px, py } from "./chart-plot.ts";
import { type ChartAxes, isFlagged, type RunPoint, VOID, wordsAlike } from "./chart-run.ts";
import { type ChartScale, chartScale, clamped, fromPixels } from "./chart-scale.ts";
import { DOTTED } from "./chart-style.ts";
import { flowConditions } from "./chart-words.ts";

const TICKS = 6;
const SOLID = [1, 0];
const CROSS = "M-0.6,-0.6L0.6,0.6M-0.6,0.6L0.6,-0.6";
/** An arrow whose tip stands at the point, by the end of the scale that it points beyond; y runs downwards. */
const ARROWS = {
  up: "M0,0L0.8,0.9L0.25,0.9L0.25,2L-0.25,2L-0.25,0.9L-0.8,0.9Z",
  down: "M0,0L0.8,-0.9L0.25,-0.9L0.25,-2L-0.25,-2L-0.25,-0.9L-0.8,-0.9Z",
  right: "M0,0L-0.9,0.8L-0.9,0.25L-2,0.25L-2,-0.25L-0.9,-0.25L-0.9,-0.8Z",
  left: "M0,0L0.9,0.8L0.9,0.25L2,0.25L2,-0.25L0.9,-0.25L0.9,-0.8Z",
} as const;
/** More labels than these that say the same are one, with the number of readings. */
const MOST_ALIKE = 8;
/** How far a tag may stand from its point, in pixels. */
const DISTANCES = [9, 22, 36, 52];
/** One that speaks for many points is the only one to do so, and its points may be dense. */
const FURTHER_DISTANCES = [...DISTANCES, 72, 96];
/** In pixels. */
const HALF_ARROW = 5;
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
  return runs.filter((run) => isBarred(run, runs.length, lead));
}

function isBarred({ run }: StyledRun, runs: number, lead: ChartFrame["lead"]): boolean {
  return runs <= MOST_BARRED || (run.result === lead && run.role === "main");
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
  const barred = isBarred(run, runs.length, lead);
  const isTagged = run.run.result === lead || runs.length <= MOST_BARRED;
  const size = (run.points.length > MANY_POINTS ? 14 : 32) * (run.style.isContext ? 0.6 : 1);
  const { color, shape } = run.style;
  const tags: Tag[] = [];
  // What was read on the way down comes first: a wider ring that a point of the way up stands in.
  const ordered = [...run.points].sort((a, b) => Number(isFalling(b)) - Number(isFalling(a)));
  for (const point of ordered) {
    const x = clamped(frame.x, point.x);
    const y = clamped(drawing.y, point.y);
    const off = offScale(point, x, y);
    const [left, top] = middleOf(px(drawing, x), py(drawing, y), off);
    const half = off === undefined ? 5 : 7;
    kept.push({ left: left - half, top: top - half, width: 2 * half, height: 2 * half });
    const { id } = run.run.result.setup.run;
    const about = { about: point.about, ...markOf(id, point.line) };
    const words = point.void ? (run.run.result === lead ? [VOID] : []) : isTagged ? point.flags : [];
    tags.push({ left, top, words, off: off && offWords(point, off, frame.axes), isVoid: point.void });
    if (off !== undefined) {
      const look = { color: point.void ? theme.axis : color, fill: theme.background };
      data["points"]?.push({ x, y, shape: ARROWS[off], size: 90, ...look, width: 1.5, ...about });
      continue;
    }
    if (point.void) {
      const look = { shape: CROSS, size: 60, color: theme.axis, fill: null, width: 1.3 };
      data["crosses"]?.push({ x, y, ...look, ...about });
      continue;
    }
    if (barred && point.bar !== undefined) drawBar(drawing, point, point.bar, color);
    if (!isFlagged(point)) {
      const look = isFalling(point) ? { size: 2.2 * size, fill: theme.background } : { size, fill: color };
      data["points"]?.push({ x, y, shape, ...look, color, width: 1.2, ...about });
      continue;
    }
    const fill = theme.background;
    data["points"]?.push({ x, y, shape: "triangle-up", size: 80, color, fill, width: 1.8, ...about });
  }
  drawTags(drawing, tags, run);
}

/** The middle of what is drawn for a point: an arrow stands inside the plot. */
function middleOf(left: number, top: number, off: keyof typeof ARROWS | undefined): Place {
  switch (off) {
    case "up":
      return [left, top + HALF_ARROW];
    case "down":
      return [left, top - HALF_ARROW];
    case "left":
      return [left + HALF_ARROW, top];
    case "right":
      return [left - HALF_ARROW, top];
    default:
      return [left, top];
  }
}

/** The end of a scale that a point lies beyond. */
function offScale(point: RunPoint, x: number, y: number): keyof typeof ARROWS | undefined {
  if (y !== point.y) return point.y > y ? "up" : "down";
  return x === point.x ? undefined : point.x > x ? "right" : "left";
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

/** The value that the scale has no room for. */
function offWords({ x, y }: RunPoint, off: keyof typeof ARROWS, { lift, ratio, flow }: ChartAxes): string {
  if (off === "up" || off === "down") return `${formatFixed(y, 0)} ${flow.symbol}`;
  return ratio ? `L/D ${formatFixed(x, 2)}` : `${formatFixed(x, 2)} ${lift.symbol}`;
}

/** What is said at a point: codes, and its value where it lies off the scale. */
interface Tag {
  readonly left: number;
  readonly top: number;
  readonly words: readonly string[];
  readonly off: string | undefined;
  readonly isVoid: boolean;
}

/**
 * The tags of a run. Those that stand on one another, and say the same or stand at the edge of the plot, are one; and so are
 * those of many readings that all say the same.
 */
function drawTags(drawing: Drawing, tags: readonly Tag[], { alike }: StyledRun): void {
  const told = tags.filter(({ words, off }) => words.length > 0 || off !== undefined);
  const places = Map.groupBy(told, ({ left, off, words }) =>
    JSON.stringify(off === undefined ? [Math.round(left), words] : [Math.round(left)]),
  );
  const groups = [...places.values()].flatMap(neighbours);
  const byWords = Map.groupBy(groups, wordsOf);
  for (const group of groups) {
    const same = byWords.get(wordsOf(group)) ?? [];
    const readings = alike.get(wordsOf(group) ?? "");
    if (same.length <= MOST_ALIKE || readings === undefined) drawTag(drawing, group);
    else if (group === same[0]) drawTag(drawing, same[Math.floor(same.length / 2)] ?? group, readings);
  }
}

/** What all tags of a group say; `undefined` at the edge of the plot, where each has a value of its own. */
function wordsOf(group: readonly Tag[]): string | undefined {
  return group.some(({ off }) => off !== undefined) ? undefined : wordsAlike(group[0]?.words ?? []);
}

/** `readings` is the number of those that say what this one says. */
function drawTag(drawing: Drawing, group: readonly Tag[], readings?: number): void {
  const { theme, width: plot } = drawing.frame;
  const [first] = group;
  if (first === undefined) return;
  const { left, top, isVoid } = first;
  const values = group.flatMap(({ off }) => off ?? []);
  const codes = [...new Set(group.flatMap(({ words }) => words))];
  wish(
    drawing,
    readings === undefined
      ? tagForms(codes, values)
      : tagForms(codes, []).flatMap((form) => [`${form} at ${readings} readings`, `${form} (${readings})`]),
    isVoid ? theme.quiet : theme.text,
    (width) =>
      around(left, top, width, readings === undefined ? DISTANCES : FURTHER_DISTANCES).map(
        ([x, y, cost = 0]) => [Math.max(0, Math.min(x, plot - width)), y, cost],
      ),
    [left, top],
  );
}

/** Tags of one lift that stand closer to the next than a label is high. */
function neighbours(tags: readonly Tag[]): readonly (readonly Tag[])[] {
  const groups: Tag[][] = [];
  for (const tag of tags.toSorted((a, b) => a.top - b.top)) {
    const last = groups.at(-1);
    if (last !== undefined && tag.top - (last.at(-1)?.top ?? 0) < LABEL_HEIGHT) last.push(tag);
    else groups.push([tag]);
  }
  return groups;
}

/** In narrow places a value off the scale, which is seen nowhere else, goes before the codes. */
function tagForms(codes: readonly string[], values: readonly string[]): readonly string[] {
  const few = codes.length > 2 ? [...codes.slice(0, 2), `${codes.length - 2} more`] : codes;
  if (values.length === 0) return [few.join(", ")];
  const more = values.length > 3 ? [...values.slice(0, 2), `${values.length - 2} more`] : values;
  const off = more.join(", ");
  return [[...few, `off scale: ${off}`].join(", "), `off scale: ${off}`, off];
}
