// Cuts what a chart draws down to a stretch of its lift axis, so that axes, labels and panels are those of that stretch alone.

import type { RunResult } from "../model/result.ts";
import { toSI } from "../quantity/unit.ts";
import type { Differences } from "./chart-differences.ts";
import { type ChartAxes, type DrawnRun, onLiftAxis, type RunLine } from "./chart-run.ts";
import type { ChartScale } from "./chart-scale.ts";

/** Two ends, the lower first: in m, or on the lift axis. */
export type Stretch = [low: number, high: number];

/** No closer than this share of the whole axis. */
const LEAST_SHARE = 0.02;

/** Where the chart's lift axis can go, and where it goes; in m. */
export interface ChartLifts {
  readonly whole: Stretch;
  readonly shown: Stretch;
}

/** A stretch in m as the axis has it, inside the whole axis; `undefined` where it is all of it, or none of it. */
export function stretchOn(
  { low, high }: ChartScale,
  lead: RunResult,
  axes: ChartAxes,
  lifts: Stretch | undefined,
): Stretch | undefined {
  const [from, to] = (lifts ?? []).map((lift) => onLiftAxis(lead, axes, lift));
  if (from === undefined || to === undefined) return undefined;
  const [start, end] = [Math.max(low, from), Math.min(high, to)];
  const isWhole = start <= low && end >= high;
  return isWhole || end - start < LEAST_SHARE * (high - low) ? undefined : [start, end];
}

/** The ends of a lift axis in m. */
export function liftsOf({ low, high }: ChartScale, lead: RunResult, { lift, ratio }: ChartAxes): Stretch {
  const valve = lead.setup.port?.valve?.value ?? 1;
  const inMetres = (x: number) => (ratio ? x * valve : toSI(x, lift));
  return [inMetres(low), inMetres(high)];
}

export function cutRun<R extends DrawnRun>(run: R, stretch: Stretch): R {
  const inside = ({ x }: { readonly x: number }) => x >= stretch[0] && x <= stretch[1];
  const cut = (lines: readonly RunLine[]) =>
    lines
      .map((line) => ({ ...line, points: cutPoints(line.points, stretch) }))
      .filter(({ points }) => points.length > 0);
  return {
    ...run,
    points: run.points.filter(inside),
    lines: cut(run.lines),
    coefficients: cut(run.coefficients),
    settles: run.settles.filter(inside),
  };
}

export function cutDifferences({ from, curves }: Differences, stretch: Stretch): Differences | undefined {
  const cut = curves
    .map((curve) => ({ ...curve, points: cutPoints(curve.points, stretch) }))
    .filter(({ points }) => points.length > 0);
  return cut.length === 0 ? undefined : { from, curves: cut };
}

/** What a line has at a place. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly noise?: number;
  readonly isEdge?: true;
}

/** Of a line that runs one way along the axis: its points inside, and where it crosses an end of the stretch a place that is no reading. */
function cutPoints<P extends Place>(points: readonly P[], [low, high]: Stretch): readonly P[] {
  return points.flatMap((point, index) => {
    const before = points[index - 1];
    const ends = before === undefined ? [] : [low, high].filter((end) => isBetween(end, before.x, point.x));
    const edges = ends
      .map((end) => at(before as P, point, end))
      .sort((a, b) => (a.x - b.x) * Math.sign(point.x - (before?.x ?? 0)));
    return point.x >= low && point.x <= high ? [...edges, point] : edges;
  });
}

function isBetween(end: number, a: number, b: number): boolean {
  return (a < end && end < b) || (b < end && end < a);
}

function at<P extends Place>(a: P, b: P, x: number): P {
  const share = (x - a.x) / (b.x - a.x);
  const between = (from: number, to: number) => from + share * (to - from);
  const noise = a.noise !== undefined && b.noise !== undefined && { noise: between(a.noise, b.noise) };
  return { ...b, x, y: between(a.y, b.y), ...noise, isEdge: true };
}
