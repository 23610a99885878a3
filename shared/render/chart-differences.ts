// How the runs of a chart stand against each other: against a baseline or the leading run, or against the mean of equals.
import { areCylinders } from "../calc/cylinders.ts";
import { gains } from "../calc/gain.ts";
import { sameReadings } from "../calc/same-readings.ts";
import { deviations } from "../calc/spread.ts";
import type { Branch, RunResult, Station } from "../model/result.ts";
import { type ChartAxes, type ChartRun, linesOf, onLiftAxis } from "./chart-run.ts";

/** A difference in per cent, and the largest that the bench makes by itself. */
export interface DifferencePoint {
  readonly x: number;
  readonly y: number;
  readonly noise: number;
  /** Lines of the rows that it stands for, counted from the first line of its run's block. */
  readonly lines: readonly number[];
  /** Where a curve is cut at the end of a stretch. */
  readonly isEdge?: true;
}

export interface DifferenceCurve {
  readonly result: RunResult;
  readonly branch: Branch;
  readonly points: readonly DifferencePoint[];
}

export interface Differences {
  /** What the differences are taken from: a run, or how many of them in the mean. */
  readonly from: ChartRun | { readonly mean: number; readonly ofCylinders: boolean };
  readonly curves: readonly DifferenceCurve[];
}

/**
 * The differences that a chart can show; `undefined` where no two of its runs are of one port, drawn or blown alike and
 * quoted alike, or where they share no lift. They are taken from the leading run's baseline, else from any baseline, else
 * from the main run, else from the mean of all.
 */
export function differencesOf(
  runs: readonly ChartRun[],
  lead: RunResult,
  axes: ChartAxes,
): Differences | undefined {
  const main = runs.find(({ role }) => role === "main");
  const baselines = runs.filter(({ role }) => role === "baseline");
  const own = baselines.find(({ result }) => result.setup.run.id === lead.setup.run.baseline?.id);
  const from = own ?? baselines[0] ?? main;
  const found = from === undefined ? fromMean(runs, axes) : fromRun(runs, from, axes);
  return found.curves.length === 0 ? undefined : found;
}

function fromRun(runs: readonly ChartRun[], from: ChartRun, axes: ChartAxes): Differences {
  const others = runs.filter(
    (run) => run !== from && run.role !== "baseline" && isAlike(run.result, from.result),
  );
  const curves = others.flatMap(({ result }) => {
    const same = sameReadings(result, from.result);
    const all = gains(result, from.result).map(({ station, gain, noise }) => ({
      station,
      value: gain,
      noise: same.has(station) ? 0 : noise,
    }));
    return (["rising", "falling"] as const).map((branch) => {
      const own = new Set(result[branch]);
      return curveOf(
        result,
        branch,
        all.filter(({ station }) => own.has(station)),
        axes,
      );
    });
  });
  return { from, curves: curves.filter(({ points }) => points.length > 0) };
}

function fromMean(runs: readonly ChartRun[], axes: ChartAxes): Differences {
  const results = runs.map(({ result }) => result);
  const [first] = results;
  const isMeaningful = first !== undefined && results.every((result) => isAlike(result, first));
  const byRun = Map.groupBy(isMeaningful ? deviations(results) : [], ({ result }) => result);
  const curves = [...byRun].map(([result, all]) =>
    curveOf(
      result,
      "rising",
      all.map(({ station, deviation, noise }) => ({ station, value: deviation, noise })),
      axes,
    ),
  );
  const ofCylinders = areCylinders(results.map(({ setup }) => setup));
  return { from: { mean: runs.length, ofCylinders }, curves };
}

function isAlike({ setup: a }: RunResult, { setup: b }: RunResult): boolean {
  return a.port?.id === b.port?.id && a.direction.value === b.direction.value;
}

function curveOf(
  result: RunResult,
  branch: Branch,
  values: readonly {
    readonly station: Station;
    readonly value: number;
    readonly noise: number;
  }[],
  axes: ChartAxes,
): DifferenceCurve {
  const points = values.flatMap(({ station, value, noise }) => {
    const x = onLiftAxis(result, axes, station.lift);
    return x === undefined || !Number.isFinite(value) || !Number.isFinite(noise)
      ? []
      : [{ x, y: 100 * value, noise: 100 * noise, lines: linesOf(station) }];
  });
  return { result, branch, points };
}

/** Of equals the two that stand highest and lowest in the mean of their differences. */
export function extremes({ curves }: Differences): readonly RunResult[] {
  const means = curves
    .map(({ result, points }) => ({
      result,
      mean: points.reduce((sum, { y }) => sum + y, 0) / points.length,
    }))
    .sort((a, b) => b.mean - a.mean);
  const [first, last] = [means[0], means.at(-1)];
  return first === undefined || last === undefined ? [] : [first.result, last.result];
}
