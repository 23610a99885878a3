// The leaks that were read on a bench, session by session, at one depression.
import type { Leak } from "../../model/model.ts";
import type { RunResult } from "../../model/result.ts";
import { leakAt } from "../depression.ts";
import { largest, median } from "../median.ts";
import type { BenchVisits } from "./bench-visits.ts";

export interface LeakPoint {
  readonly file: string;
  readonly date: string | undefined;
  readonly port: string | undefined;
  /** m3/s as the display shows it, at the history's depression; 0 where `none` is stated. */
  readonly flow: number;
}

export interface LeakHistory {
  /** Pa: the one that most leaks were read at. */
  readonly depression: number;
  readonly points: readonly LeakPoint[];
  readonly median: number;
  readonly largest: number;
}

/** One entry for each leak that a session states, in order; `undefined` where none does. Scaled by its own exponent. */
export function leakHistory({ visits }: BenchVisits): LeakHistory | undefined {
  const stated = visits.flatMap(({ file, date, runs }) =>
    distinctLeaks(runs).map(({ run, leak }) => ({
      file,
      date: run.setup.date?.value ?? date,
      port: run.setup.port?.id,
      leak,
    })),
  );
  const depression = usual(stated.flatMap(({ leak }) => (leak === "none" ? [] : [leak.depression.value])));
  if (depression === undefined) return undefined;
  const points = stated.flatMap(({ leak, ...place }): readonly LeakPoint[] => {
    if (leak === "none") return [{ ...place, flow: 0 }];
    const flow = leakAt(leak.flow.value, leak.depression.value, depression, leak.exponent ?? 0.5);
    return flow === undefined || !Number.isFinite(flow) ? [] : [{ ...place, flow }];
  });
  const flows = points.map(({ flow }) => flow);
  const middle = median(flows);
  const most = largest(flows);
  if (middle === undefined || most === undefined) return undefined;
  return { depression, points, median: middle, largest: most };
}

/** A session's leak counts once, however many runs stand on it. */
function distinctLeaks(runs: readonly RunResult[]) {
  const seen = new Set<Leak | "none">();
  return runs.flatMap((run) => {
    const leak = run.setup.leak?.value;
    if (leak === undefined || seen.has(leak)) return [];
    seen.add(leak);
    return [{ run, leak }];
  });
}

/** The value that stands most often; of equals the first. */
function usual(values: readonly number[]): number | undefined {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce<readonly [number, number] | undefined>(
    (most, entry) => (most === undefined || entry[1] > most[1] ? entry : most),
    undefined,
  )?.[0];
}
