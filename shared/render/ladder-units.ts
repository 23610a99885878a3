// The units that a ladder is shown in: those asked for, its own, and those of its run's results.
import type { LadderResult } from "../model/ladder-result.ts";
import type { Unit } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

export interface LadderUnits {
  readonly depression: Unit;
  readonly flow: Unit;
}

export function ladderUnits(
  { ladder, setup }: Pick<LadderResult, "ladder" | "setup">,
  wanted: WantedUnits = [],
): LadderUnits {
  const column = (name: string) => ladder.table?.columns.find((entry) => entry.name === name)?.unit;
  const units = displayUnits(setup, wanted);
  return {
    depression: wantedUnit(wanted, "pressure") ?? column("depression") ?? units.depression,
    flow: wantedUnit(wanted, "flow") ?? column("flow") ?? units.flow,
  };
}
