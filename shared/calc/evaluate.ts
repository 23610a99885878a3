// Computes the runs of a file: rows, branches, averaged stations, their uncertainties, and where flow falls back.
import type { Bench, Port, Run } from "../model/model.ts";
import type { Impossible, Repeatability, RowResult, RunResult, Station } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { branchFinder } from "./branches.ts";
import { columnValues } from "./column-values.ts";
import { computeRows, type Rows } from "./compute-rows.ts";
import type { ComputedRow, OfRow } from "./computed-row.ts";
import { fallBacks } from "./fall-back.ts";
import { portArea } from "./port-areas.ts";
import { repeatabilityOf } from "./repeatability.ts";
import { slopeAt } from "./slope-at.ts";
import { expanded, type StationTerms, stationsOf } from "./stations.ts";
import { type SlipPoint, unitSlips } from "./unit-slip.ts";

/** The results of the runs of one file, in order. Runs on one bench share the repeatability pooled from all of them. */
export function evaluateRuns(setups: readonly Setup[]): RunResult[] {
  const repeatability = repeatabilities(setups);
  return setups.map((setup) => evaluateRun(setup, repeatability(setup)));
}

/** The result of one run on a bench that repeats as given. */
export function evaluateRun(setup: Setup, repeatability: Repeatability): RunResult {
  return judge(setup, relatedRows(setup), repeatability);
}

/**
 * How well the bench of each run of a file repeats: as stated, else pooled from the repeated readings of all the file's
 * runs on it, else a default.
 */
export function repeatabilities(setups: readonly Setup[]): (setup: Setup) => Repeatability {
  const known = new Map<Bench | undefined, Repeatability>();
  return ({ bench }) => {
    const before = known.get(bench);
    if (before !== undefined) return before;
    const isStated = bench === undefined || bench.repeat !== undefined;
    const runs = isStated ? [] : setups.filter((setup) => setup.bench === bench && hasRepeats(setup.run));
    const found = repeatabilityOf(
      bench,
      runs.flatMap((setup) => repeatedCells(relatedRows(setup))),
    );
    known.set(bench, found);
    return found;
  };
}

/** Whether some lift of a run was read twice: no other run tells how well its bench repeats. */
function hasRepeats({ table }: Run): boolean {
  const lifts = columnValues(table, "lift");
  const read = table?.rows.flatMap((row) => lifts?.value(row) ?? []) ?? [];
  return new Set(read).size < read.length;
}

/** The rows of a run with what they say of each other. */
function relatedRows(setup: Setup): Rows {
  const rows = computeRows(setup);
  markSlips(rows);
  markBranches(rows);
  return rows;
}

function markSlips(rows: Rows): void {
  const judged: ComputedRow[] = [];
  const points: SlipPoint[] = [];
  for (const row of rows) {
    const { lift, flow } = row;
    if (row.row.void !== undefined || lift === undefined || flow === undefined) continue;
    judged.push(row);
    points.push({ lift, flow: flow.corrected });
  }
  for (const [index, slip] of unitSlips(points)) {
    const row = judged[index];
    if (row !== undefined) row.slip = slip;
  }
}

function markBranches(rows: Rows): void {
  const branchOf = branchFinder();
  for (const row of rows) {
    const counts = row.row.void === undefined && row.slip?.column !== "lift";
    row.branch = counts ? branchOf(row.lift) : undefined;
  }
}

/** Corrected flows of rows that were taken more than once, by lift and branch. */
function repeatedCells(rows: Rows): (readonly number[])[] {
  const cells = new Map<string, number[]>();
  for (const row of rows) {
    if (!isUsable(row) || row.flow === undefined) continue;
    const key = `${row.branch} ${row.lift}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [row.flow.corrected]);
    else cell.push(row.flow.corrected);
  }
  return [...cells.values()].filter((cell) => cell.length > 1);
}

/** Whether a row may take part in means: not void, complete, and neither a slip nor impossible. */
export function isUsable(row: RowResult): boolean {
  return (
    row.row.void === undefined &&
    row.branch !== undefined &&
    row.flow !== undefined &&
    row.slip === undefined &&
    row.impossible === undefined
  );
}

function judge(setup: Setup, rows: Rows, repeatability: Repeatability): RunResult {
  const terms: StationTerms = {
    deviation: repeatability.deviation,
    liftSetting: setup.liftSetting.value,
    scale: (setup.bench?.uncertainty?.value ?? 0) / 2,
  };
  let stations = average(rows, terms);
  if (markImpossible(rows, setup.port)) stations = average(rows, terms);
  const { rising, falling } = stations;
  return { setup, rows, rising, falling, repeatability, fallBacks: fallBacks(rising, repeatability) };
}

interface Stations {
  readonly rising: readonly Station[];
  readonly falling: readonly Station[];
}

/** The stations of a run, which its rows take their uncertainties from. */
function average(rows: Rows, terms: StationTerms): Stations {
  const usable = rows.filter(isUsable);
  const stations = {
    rising: stationsOf("rising", usable, terms),
    falling: stationsOf("falling", usable, terms),
  };
  const ofRow = uncertaintyOf(stations, terms);
  for (const row of rows) row.uncertainBy(ofRow);
  return stations;
}

/** A row by itself: one reading, on the slope of its branch; one that is left out of the means has its lift to set, too. */
function uncertaintyOf({ rising, falling }: Stations, terms: StationTerms): OfRow<number> {
  return ({ lift, branch, flow, variance }) => {
    // A void row belongs to no branch; it stands on the rising one, if there is one.
    const stations = branch === "falling" || rising.length === 0 ? falling : rising;
    const slope = lift === undefined ? 0 : slopeAt(stations, lift);
    return expanded(flow?.corrected ?? Number.NaN, slope, variance, 1, terms);
  };
}

function markImpossible(rows: Rows, port: Port | undefined): boolean {
  if (port === undefined) return false;
  let any = false;
  for (const row of rows) {
    if (row.row.void !== undefined || row.lift === undefined || row.effectiveArea === undefined) continue;
    const limit = leastArea(port, row.lift);
    if (limit === undefined) continue;
    // The uncertainty is asked for only where it can matter.
    if (row.effectiveArea <= limit.geometric) continue;
    const uncertainty = row.uncertainty ?? 0;
    if (row.effectiveArea * (1 - uncertainty) > limit.geometric) {
      row.impossible = { ...limit, effective: row.effectiveArea, uncertainty };
      any = true;
    }
  }
  return any;
}

/** The gap area, or, where it is not known, the smaller of curtain and throat. */
function leastArea(port: Port, lift: number): Omit<Impossible, "effective" | "uncertainty"> | undefined {
  const gap = portArea("gap", port, lift);
  if (gap !== undefined) return { area: "gap", geometric: gap };
  const curtain = portArea("curtain", port, lift);
  const throat = portArea("throat", port, lift);
  if (curtain !== undefined && (throat === undefined || curtain <= throat))
    return { area: "curtain", geometric: curtain };
  return throat === undefined ? undefined : { area: "throat", geometric: throat };
}
