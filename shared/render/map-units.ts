// The units that a velocity map is shown in: its own, unless others are asked for.
import type { VelocityMap } from "../model/model.ts";
import type { Unit } from "../quantity/unit.ts";
import { unit } from "./display-units.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

export interface MapUnits {
  readonly place: Unit;
  readonly speed: Unit;
}

/** Speeds from a pitot probe go with the unit of the places. */
export function mapUnits({ table }: VelocityMap, wanted: WantedUnits = []): MapUnits {
  const column = (name: string) => table?.columns.find((entry) => entry.name === name)?.unit;
  const place = wantedUnit(wanted, "length") ?? column("x") ?? unit("mm");
  const isInches = ["in", "thou", "ft"].includes(place.symbol);
  return {
    place,
    speed: wantedUnit(wanted, "speed") ?? column("velocity") ?? unit(isInches ? "ft/s" : "m/s"),
  };
}
