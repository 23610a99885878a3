// The units that a ladder is shown in: its own, and those of its run's results.
import type { LadderResult } from "../model/ladder-result.ts";
import type { Unit } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";

export function ladderUnits({ ladder, setup }: Pick<LadderResult, "ladder" | "setup">): {
  readonly depression: Unit;
  readonly flow: Unit;
} {
  const column = (name: string) => ladder.table?.columns.find((entry) => entry.name === name)?.unit;
  const units = displayUnits(setup);
  return { depression: column("depression") ?? units.depression, flow: column("flow") ?? units.flow };
}
