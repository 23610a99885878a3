// Chooses the units that a bench's history is shown in: those that most of its runs use.
import type { BenchVisits } from "../calc/bench/bench-visits.ts";
import type { Unit } from "../quantity/unit.ts";
import { type DisplayUnits, displayUnits, unit } from "./display-units.ts";

export interface BenchUnits {
  readonly lift: Unit;
  readonly flow: Unit;
  readonly depression: Unit;
}

export function benchUnits({ bench, visits }: BenchVisits): BenchUnits {
  const used = visits.flatMap(({ runs }) => runs.map(({ setup }) => displayUnits(setup)));
  const plate = visits.flatMap(({ plates }) => plates.flatMap((check) => check.plate?.flow ?? []))[0];
  return {
    lift: usual(used, "lift") ?? unit("in"),
    flow: usual(used, "flow") ?? plate?.flow.unit ?? unit("cfm"),
    depression: bench.within?.unit ?? usual(used, "depression") ?? plate?.depression.unit ?? unit("inH2O"),
  };
}

/** The unit of that kind that most runs use; of equals the first. */
function usual(used: readonly DisplayUnits[], kind: "lift" | "flow" | "depression"): Unit | undefined {
  const counts = new Map<Unit, number>();
  for (const units of used) counts.set(units[kind], (counts.get(units[kind]) ?? 0) + 1);
  let best: Unit | undefined;
  for (const [candidate, count] of counts) if (count > (best ? (counts.get(best) ?? 0) : 0)) best = candidate;
  return best;
}
