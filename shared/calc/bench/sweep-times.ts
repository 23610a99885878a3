// What a full run of an intake or an exhaust port costs in time on a bench, and where that time goes.
import type { Side } from "../../model/model.ts";
import type { RunResult } from "../../model/result.ts";
import { columnValues } from "../column-values.ts";
import { largest, median } from "../median.ts";
import type { BenchVisits } from "./bench-visits.ts";

/** Times s; shares of the time of all timed runs of the side. */
export interface SweepTime {
  readonly side: Side;
  readonly runs: number;
  readonly median: number;
  readonly longest: number;
  /** Median number of timed rows a run, and median time a row. */
  readonly rows: number;
  readonly perRow: number;
  /** Spent in the lower, the middle and the upper third of a run's lifts. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** Spent on rows that were void, and on those that repeat a lift. */
  readonly voids: number;
  readonly repeats: number;
  /** Spent between settling and reading; missing where readings were not timed. */
  readonly waiting?: number;
}

interface TimedRow {
  readonly time: number;
  readonly third: 0 | 1 | 2 | undefined;
  readonly isVoid: boolean;
  readonly isRepeat: boolean;
  readonly waiting: number | undefined;
}

/** The sweep times of each side that has a timed run. A run without a port counts by the direction of its air. */
export function sweepTimes({ visits }: BenchVisits): readonly SweepTime[] {
  const runs = visits.flatMap((visit) => visit.runs);
  return (["intake", "exhaust"] as const).flatMap((side) => {
    const timed = runs
      .filter((run) => sideOf(run) === side)
      .map(timedRows)
      .filter((rows) => rows.length > 0);
    return timed.length === 0 ? [] : (sweepTime(side, timed) ?? []);
  });
}

/** The side of the port, else the one that the air's direction speaks for. */
export function sideOf({ setup }: RunResult): Side {
  return setup.port?.side ?? (setup.direction.value === "blows" ? "exhaust" : "intake");
}

/** The reading's time where it was written, else the time to settle, of all rows, void ones too. */
function timedRows({ setup, rows }: RunResult): readonly TimedRow[] {
  const read = columnValues(setup.run.table, "read");
  const settle = columnValues(setup.run.table, "settle");
  const lifts = rows.flatMap(({ lift }) => lift ?? []);
  const lowest = lifts.reduce((low, lift) => Math.min(low, lift), Number.POSITIVE_INFINITY);
  const highest = lifts.reduce((high, lift) => Math.max(high, lift), Number.NEGATIVE_INFINITY);
  const seen = new Set<number>();
  return rows.flatMap(({ row, lift }): readonly TimedRow[] => {
    const settled = settle?.value(row);
    const readAt = read?.value(row);
    const time = readAt ?? settled;
    const isVoid = row.void !== undefined;
    const isRepeat = !isVoid && lift !== undefined && seen.has(lift);
    if (lift !== undefined && !isVoid) seen.add(lift);
    if (time === undefined) return [];
    const waiting = readAt === undefined || settled === undefined ? undefined : Math.max(0, readAt - settled);
    return [{ time, third: thirdOf(lift, lowest, highest), isVoid, isRepeat, waiting }];
  });
}

function thirdOf(lift: number | undefined, lowest: number, highest: number): 0 | 1 | 2 | undefined {
  if (lift === undefined || !(highest > lowest)) return undefined;
  const share = (lift - lowest) / (highest - lowest);
  // A station on the border belongs to the lower third, whatever its last binary digit is.
  if (share <= 1 / 3 + 1e-9) return 0;
  return share <= 2 / 3 + 1e-9 ? 1 : 2;
}

function sweepTime(side: Side, runs: readonly (readonly TimedRow[])[]): SweepTime | undefined {
  const all = runs.flat();
  const total = sum(all);
  const totals = runs.map(sum);
  const middle = median(totals);
  const longest = largest(totals);
  const rows = median(runs.map((run) => run.length));
  const perRow = median(all.map(({ time }) => time));
  if (!(total > 0) || middle === undefined || longest === undefined) return undefined;
  if (rows === undefined || perRow === undefined) return undefined;
  const share = (keep: (row: TimedRow) => boolean) => sum(all.filter(keep)) / total;
  const waits = all.flatMap(({ waiting }) => waiting ?? []);
  return {
    side,
    runs: runs.length,
    median: middle,
    longest,
    rows,
    perRow,
    low: share(({ third }) => third === 0),
    middle: share(({ third }) => third === 1),
    high: share(({ third }) => third === 2),
    voids: share(({ isVoid }) => isVoid),
    repeats: share(({ isRepeat }) => isRepeat),
    ...(waits.length > 0 && { waiting: waits.reduce((a, b) => a + b, 0) / total }),
  };
}

function sum(rows: readonly TimedRow[]): number {
  return rows.reduce((total, { time }) => total + time, 0);
}
