// The units that a trace is shown in: its own, and those of its run's results.
import type { TraceResult } from "../model/trace-result.ts";
import type { Unit } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";

export interface TraceUnits {
  readonly time: Unit;
  readonly depression: Unit;
  readonly flow: Unit;
  readonly area: Unit;
}

export function traceUnits({ trace, setup }: Pick<TraceResult, "trace" | "setup">): TraceUnits {
  const column = (name: string) => trace.table?.columns.find((entry) => entry.name === name)?.unit;
  const units = displayUnits(setup);
  return {
    time: column("time") ?? trace.log?.time?.unit ?? units.time,
    depression: column("depression") ?? trace.log?.depression?.unit ?? units.depression,
    flow: column("flow") ?? trace.log?.flow?.unit ?? units.flow,
    area: units.area,
  };
}
