// How long the bench took from opening the valve to holding its depression.
import type { Bench } from "../model/model.ts";
import type { RunResult, Station } from "../model/result.ts";
import { columnValues } from "./column-values.ts";

/** Of a bench's usual settle time: what takes longer is slow for that bench (common practice, no published source). */
const SLOW_SHARE = 1.5;

/** The time up to which an approach is quick, and where it comes from. */
export interface QuickLimit {
  /** s */
  readonly time: number;
  readonly from: "quick" | "settle";
}

/** A bench's `quick`, else one and a half times its usual `settle`; `undefined` where it states neither. */
export function quickLimit(bench: Bench | undefined): QuickLimit | undefined {
  if (bench?.quick !== undefined) return { time: bench.quick.value, from: "quick" };
  if (bench?.settle === undefined) return undefined;
  return { time: SLOW_SHARE * bench.settle.value, from: "settle" };
}

/** The slowest approach, in s, among the readings of a station; `undefined` where none of them was timed. */
export function slowestSettle({ setup }: Pick<RunResult, "setup">, { rows }: Station): number | undefined {
  const settle = columnValues(setup.run.table, "settle");
  const times = rows.flatMap(({ row }) => settle?.value(row) ?? []);
  return times.length === 0 ? undefined : times.reduce((slowest, time) => Math.max(slowest, time));
}
