// Makes averaged stations for tests that judge a curve and nothing before it.
import type { Repeatability, Station } from "../../shared/model/result.ts";
import { rowResult } from "./row-result.ts";

const ROW = rowResult();

/** Stations at lifts 1, 2, 3 …; `readings` are the rows averaged at each, one where not given. */
export function stations(flows: readonly number[], readings: readonly number[] = []): Station[] {
  return flows.map((flow, index) => ({
    lift: index + 1,
    flow,
    rows: Array.from({ length: readings[index] ?? 1 }, () => ROW),
    slope: 0,
    uncertainty: 0.01,
  }));
}

/** A repeatability that a bench states. */
export function known(deviation: number): Repeatability {
  return { deviation, source: "bench" };
}
