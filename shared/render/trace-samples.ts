// Where the samples of a trace stand in its block.
import { columnValues } from "../calc/column-values.ts";
import type { TraceResult } from "../model/trace-result.ts";

/** Lines of the samples, counted from the block's first, by their times in s; empty where they stand in a log. */
export function sampleLines({ trace: { table, log } }: TraceResult): ReadonlyMap<number, number> {
  const time = log === undefined ? columnValues(table, "time") : undefined;
  return new Map(
    (table?.rows ?? []).flatMap((row) => {
      const at = row.void === undefined ? time?.value(row) : undefined;
      return at === undefined ? [] : [[at, row.line] as const];
    }),
  );
}
