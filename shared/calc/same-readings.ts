// Two states of one run: what is the same reading in both was taken once, so that chance has no part in a difference.
import type { RowResult, RunResult, Station } from "../model/result.ts";
import { columnValues } from "./column-values.ts";
import { isSameLift } from "./gain.ts";

/** What a display and a dial show. */
const READ = ["lift", "depression", "flow", "reading", "drop", "signal"];
/** Numbers that were written in another unit are rounded otherwise, and no longer the same. */
const ROUNDING = 1e-9;

/** The stations of both runs that stand on the same readings; none of two runs that are not one. */
export function sameReadings(own: RunResult, theirs: RunResult): ReadonlySet<Station> {
  const same = new Set<Station>();
  if (!isOneRun(own, theirs)) return same;
  for (const branch of ["rising", "falling"] as const) {
    for (const station of own[branch]) {
      const other = theirs[branch].find(({ lift }) => isSameLift(lift, station.lift));
      if (other === undefined || !isReadAlike(own, station, theirs, other)) continue;
      same.add(station).add(other);
    }
  }
  return same;
}

/** Ids are unique over what a file can see: the same one at the same time is another state of the run, or a copy. */
function isOneRun({ setup: own }: RunResult, { setup: theirs }: RunResult): boolean {
  return (
    own.run.id !== "" &&
    own.run.id === theirs.run.id &&
    own.date?.value === theirs.date?.value &&
    own.bench?.id === theirs.bench?.id
  );
}

function isReadAlike(own: RunResult, station: Station, theirs: RunResult, other: Station): boolean {
  return (
    station.rows.length === other.rows.length &&
    station.rows.every((row, at) => isSameReading(own, row, theirs, other.rows[at]))
  );
}

function isSameReading(own: RunResult, row: RowResult, theirs: RunResult, other: RowResult | undefined) {
  if (other === undefined) return false;
  return READ.every((name) => {
    const [a, b] = [shownIn(own, row, name), shownIn(theirs, other, name)];
    if (a === undefined || b === undefined) return a === b;
    return Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b));
  });
}

function shownIn({ setup }: RunResult, { row }: RowResult, column: string): number | undefined {
  return columnValues(setup.run.table, column)?.value(row);
}
