// Gives every computed value a unit, also where a record uses none of its dimension.
import type { Dimension } from "../quantity/dimension.ts";
import { type Unit, unitsOf } from "../quantity/unit.ts";
import { type DisplayUnits, unitFor } from "./display-units.ts";

/** The run's display unit of a dimension, else the SI unit. */
export function resultUnit(units: DisplayUnits, dimension: Dimension): Unit {
  const shown = unitFor(units, dimension) ?? siUnit(dimension);
  if (shown === undefined) throw new RangeError(`${dimension} has units in the table`);
  return shown;
}

function siUnit(dimension: Dimension): Unit | undefined {
  const all = unitsOf(dimension);
  return all.find(({ factor, offset }) => factor === 1 && offset === 0) ?? all[0];
}
