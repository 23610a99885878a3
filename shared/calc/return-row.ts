// A run that goes home to its first lift says by that how far it has drifted.
import type { RowResult, RunResult } from "../model/result.ts";
import { isUsable } from "./evaluate.ts";

/** The last usable row of a run, if it returns to the first one's lift after others in between. */
export function returnRow({ rows }: Pick<RunResult, "rows">): RowResult | undefined {
  const first = rows.find(isUsable);
  const last = rows.findLast(isUsable);
  if (first === undefined || last === undefined || first === last || first.lift !== last.lift)
    return undefined;
  return rows.some((row) => isUsable(row) && row.lift !== first.lift) ? last : undefined;
}
