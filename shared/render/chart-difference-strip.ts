// The strip of gains, or of what cylinders differ by, in per cent, with the band of what the bench does not resolve.
import type { DifferencePoint, Differences } from "./chart-differences.ts";
import { endLabels, endLabelsHeight } from "./chart-end-labels.ts";
import { type ChartFrame, type DrawnPanel, lineRows, MARGIN_GAP } from "./chart-frame.ts";
import { areas, type Json, LABEL_SIZE, lines, pieces, ring, symbols, texts } from "./chart-layers.ts";
import { furtherMarks, leadingMark } from "./chart-mark.ts";
import { type ChartScale, chartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { DOTTED } from "./chart-style.ts";
import { clipText, textWidth } from "./chart-text.ts";

const HEIGHT = 96;
const TICKS = 4;
/** The band reaches this far beyond its first and its last lift, in pixels. */
const OVERHANG = 6;
/** What stands beside the band. */
export const BAND_LABEL = "not resolved";

/** `undefined` where no two runs can be laid against each other. */
export function differenceStrip(frame: ChartFrame): DrawnPanel | undefined {
  const { differences, theme, x, width, runs, left, right } = frame;
  const y = differenceScale(frame);
  if (differences === undefined || y === undefined) return undefined;
  const height = frame.isCrowd ? Math.max(HEIGHT, endLabelsHeight(frame, 1)) : HEIGHT;
  const curves: Json[] = [];
  const dots: Json[] = [];
  const further: Json[] = [];
  const byResult = Map.groupBy(differences.curves, ({ result }) => result);
  for (const [index, run] of runs.entries()) {
    for (const { branch, points } of byResult.get(run.run.result) ?? []) {
      const { color, dash, shape, width: thick, isContext } = run.style;
      const falling = branch === "falling";
      const look = { color, width: thick * 0.8, dash: falling ? DOTTED : dash };
      for (const row of lineRows(points, `${index} ${branch}`, look)) curves.push(row);
      const fill = falling ? theme.background : color;
      const size = isContext ? 10 : 22;
      const { id } = run.run.result.setup.run;
      const read = points.filter(({ isEdge }) => !isEdge);
      for (const { x: at, y: percent, lines: rows } of read) {
        dots.push({ x: at, y: percent, shape, size, color, fill, width: 1, ...leadingMark(id, rows) });
      }
      for (const mark of furtherMarks(id, read)) further.push(mark);
    }
  }
  const ends = frame.isCrowd ? endLabels(frame, y, height, "all", lastDifference(differences)) : undefined;
  const middle = { x: x.low, x2: x.high, y: 0, y2: 0, color: theme.axis, width: 1, dash: [1, 0] };
  const beside = fromPixels(x, width, width + MARGIN_GAP);
  const label = { x: beside, y: 0, text: BAND_LABEL, color: theme.quiet };
  return {
    panel: {
      width,
      height,
      x,
      y,
      title: fittingText(titlesOf(frame, differences), left + width + right),
      indent: left,
      layers: [
        areas("difference-band"),
        pieces("difference-marks"),
        lines("difference-lines"),
        symbols("differences", "none"),
        ring("differences", theme),
        ring("difference-places", theme),
        symbols("difference-keys", "none"),
        texts("difference-labels"),
      ],
    },
    data: {
      "difference-band": bandRows(frame, differences),
      "difference-marks": [middle, ...(ends?.leaders ?? [])],
      "difference-lines": curves,
      differences: dots,
      "difference-places": further,
      "difference-keys": ends?.keys ?? [],
      "difference-labels": ends?.labels ?? [label],
    },
  };
}

/** About zero, over all differences and the band; `undefined` where there are none. */
export function differenceScale({ differences }: Pick<ChartFrame, "differences">): ChartScale | undefined {
  if (differences === undefined) return undefined;
  const points = differences.curves.flatMap((curve) => curve.points);
  return chartScale([0, ...points.flatMap(({ y, noise }) => [y, noise, -noise])], TICKS, true);
}

/** The longest first. A crowd's labels leave no room beside the band, so that its title says what that is. */
function titlesOf({ runs, isCrowd }: ChartFrame, { from }: Differences): readonly string[] {
  if (!("mean" in from)) return [`Gain over ${runs.find(({ run }) => run === from)?.label ?? ""}, %`];
  const equals = from.ofCylinders ? `${from.mean} cylinders` : `all ${from.mean}`;
  const shaded = isCrowd ? `; shaded: ${BAND_LABEL}` : "";
  return [
    `Difference from the mean of ${equals}, %${shaded}`,
    `From the mean of ${equals}, %${shaded}`,
    `Off the mean, %${shaded}`,
  ];
}

function fittingText(texts: readonly string[], width: number): string {
  const found = texts.find((text) => textWidth(text, LABEL_SIZE) <= width);
  return found ?? clipText(texts.at(-1) ?? "", width, LABEL_SIZE);
}

/** Where each curve ends, by its run. */
function lastDifference({ curves }: Differences) {
  const byResult = new Map(curves.map(({ result, points }) => [result, points.at(-1)] as const));
  return ({ run }: ChartFrame["runs"][number]) => byResult.get(run.result);
}

/** The widest noise at each lift of the way up, on either side of zero. */
function bandRows({ x, width, theme }: ChartFrame, { curves }: Differences): Json[] {
  const widest = new Map<number, DifferencePoint>();
  for (const point of curves.flatMap((curve) => (curve.branch === "rising" ? curve.points : []))) {
    if (point.noise > (widest.get(point.x)?.noise ?? 0)) widest.set(point.x, point);
  }
  const points = [...widest.values()].sort((a, b) => a.x - b.x);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const beside = (at: number, pixels: number) =>
    Math.max(x.low, fromPixels(x, width, toPixels(x, width, at) + pixels));
  const row = (at: number, noise: number) => ({ x: at, y: -noise, y2: noise, fill: theme.band });
  return [
    row(beside(first.x, -OVERHANG), first.noise),
    ...points.map((point) => row(point.x, point.noise)),
    row(beside(last.x, OVERHANG), last.noise),
  ];
}
