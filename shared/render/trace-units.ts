// The units that a trace is shown in: those asked for, its own, and those of its run's results.
import type { TraceResult } from "../model/trace-result.ts";
import type { Unit } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

export interface TraceUnits {
  readonly time: Unit;
  readonly depression: Unit;
  readonly flow: Unit;
  readonly area: Unit;
}

export function traceUnits(
  { trace, setup }: Pick<TraceResult, "trace" | "setup">,
  wanted: WantedUnits = [],
): TraceUnits {
  const column = (name: string) => trace.table?.columns.find((entry) => entry.name === name)?.unit;
  const units = displayUnits(setup, wanted);
  return {
    time: wantedUnit(wanted, "time") ?? column("time") ?? trace.log?.time?.unit ?? units.time,
    depression:
      wantedUnit(wanted, "pressure") ??
      column("depression") ??
      trace.log?.depression?.unit ??
      units.depression,
    flow: wantedUnit(wanted, "flow") ?? column("flow") ?? trace.log?.flow?.unit ?? units.flow,
    area: units.area,
  };
}
