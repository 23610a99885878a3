// All that the records of a shop say of one bench: its sessions, in the order in which they were.
import type { Bench } from "../../model/model.ts";
import type { PlateResult, RowResult, RunResult } from "../../model/result.ts";
import { columnValues } from "../column-values.ts";

/** What one record has of a bench. */
export interface BenchVisit {
  /** As it is printed. */
  readonly file: string;
  /** Of the session; runs may have dates of their own. */
  readonly date: string | undefined;
  readonly runs: readonly RunResult[];
  readonly plates: readonly PlateResult[];
}

export interface BenchVisits {
  readonly bench: Bench;
  /** By date; those without one last. */
  readonly visits: readonly BenchVisit[];
}

/** One reading with what was noted of the bench itself; void ones are none. */
export interface BenchReading {
  readonly run: RunResult;
  readonly result: RowResult;
  /** s from opening the valve to holding the target, and to the reading. */
  readonly settle: number | undefined;
  readonly read: number | undefined;
  /** Motor output, share of one. */
  readonly duty: number | undefined;
}

/** The readings of all runs in order, without the void ones. */
export function benchReadings({ visits }: BenchVisits): readonly BenchReading[] {
  return visits.flatMap(({ runs }) =>
    runs.flatMap((run) => {
      const { table } = run.setup.run;
      const settle = columnValues(table, "settle");
      const read = columnValues(table, "read");
      const duty = columnValues(table, "duty");
      return run.rows.flatMap((result): readonly BenchReading[] => {
        const { row } = result;
        if (row.void !== undefined) return [];
        return [{ run, result, settle: settle?.value(row), read: read?.value(row), duty: duty?.value(row) }];
      });
    }),
  );
}
