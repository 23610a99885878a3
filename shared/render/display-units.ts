// Chooses the units that results are shown in: those that the record itself uses.

import type { Setup } from "../model/setup.ts";
import type { Dimension } from "../quantity/dimension.ts";
import { findUnit, type Unit } from "../quantity/unit.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

/** What results are shown in units of. */
export const RESULT_DIMENSIONS: readonly Dimension[] = [
  "length",
  "pressure",
  "flow",
  "mass-flow",
  "area",
  "speed",
  "time",
];

/** The units of one run's results. */
export interface DisplayUnits {
  readonly lift: Unit;
  readonly depression: Unit;
  readonly flow: Unit;
  readonly massFlow: Unit;
  readonly area: Unit;
  readonly speed: Unit;
  readonly time: Unit;
}

/**
 * Lift, depression and flow as the run's columns write them (a display without flow: as its bench writes flow); areas,
 * speeds and mass flow in inch units where lift is shown in inches or thousandths, else in metric ones. Each of `wanted`
 * takes the place of the unit of its dimension.
 */
export function displayUnits(setup: Setup, wanted: WantedUnits = []): DisplayUnits {
  const column = (name: string) => setup.run.table?.columns.find((entry) => entry.name === name)?.unit;
  const asked = (dimension: Dimension) => wantedUnit(wanted, dimension);
  const { bench } = setup;
  const lift = asked("length") ?? column("lift") ?? setup.port?.valve?.unit ?? unit("in");
  const inches = ["in", "thou", "ft"].includes(lift.symbol);
  const benchFlow =
    bench?.ranges[0]?.flow.unit ?? bench?.table?.columns.find((entry) => entry.name === "flow")?.unit;
  return {
    lift,
    depression: asked("pressure") ?? column("depression") ?? setup.target.value.unit,
    flow: asked("flow") ?? column("flow") ?? benchFlow ?? unit(inches ? "cfm" : "L/s"),
    massFlow: asked("mass-flow") ?? unit(inches ? "lb/min" : "g/s"),
    area: asked("area") ?? unit(inches ? "in2" : "mm2"),
    speed: asked("speed") ?? unit(inches ? "ft/s" : "m/s"),
    time: asked("time") ?? column("settle") ?? column("read") ?? unit("s"),
  };
}

/** A unit of the table by its symbol. */
export function unit(symbol: string): Unit {
  const found = findUnit(symbol);
  if (found === undefined) throw new RangeError(`${symbol} is in the table of units`);
  return found.unit;
}

/** The unit of a dimension among a run's display units; `undefined` for dimensions that results do not have. */
export function unitFor(units: DisplayUnits, dimension: Dimension): Unit | undefined {
  switch (dimension) {
    case "length":
      return units.lift;
    case "pressure":
      return units.depression;
    case "flow":
      return units.flow;
    case "mass-flow":
      return units.massFlow;
    case "area":
      return units.area;
    case "speed":
      return units.speed;
    case "time":
      return units.time;
    default:
      return undefined;
  }
}
