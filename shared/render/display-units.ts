// Chooses the units that results are shown in: those that the record itself uses.

import type { Setup } from "../model/setup.ts";
import type { Dimension } from "../quantity/dimension.ts";
import { findUnit, type Unit } from "../quantity/unit.ts";

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
 * speeds and mass flow in inch units where lift is in inches or thousandths, else in metric ones. Each of `wanted` takes
 * the place of the unit of its dimension.
 */
export function displayUnits(setup: Setup, wanted: readonly Unit[] = []): DisplayUnits {
  const units = ownUnits(setup);
  const take = (dimension: Dimension, own: Unit) =>
    wanted.findLast(({ dimensions }) => dimensions.includes(dimension)) ?? own;
  return {
    lift: take("length", units.lift),
    depression: take("pressure", units.depression),
    flow: take("flow", units.flow),
    massFlow: take("mass-flow", units.massFlow),
    area: take("area", units.area),
    speed: take("speed", units.speed),
    time: take("time", units.time),
  };
}

function ownUnits(setup: Setup): DisplayUnits {
  const column = (name: string) => setup.run.table?.columns.find((entry) => entry.name === name)?.unit;
  const { bench } = setup;
  const lift = column("lift") ?? setup.port?.valve?.unit ?? unit("in");
  const inches = ["in", "thou", "ft"].includes(lift.symbol);
  const benchFlow =
    bench?.ranges[0]?.flow.unit ?? bench?.table?.columns.find((entry) => entry.name === "flow")?.unit;
  return {
    lift,
    depression: column("depression") ?? setup.target.value.unit,
    flow: column("flow") ?? benchFlow ?? unit(inches ? "cfm" : "L/s"),
    massFlow: unit(inches ? "lb/min" : "g/s"),
    area: unit(inches ? "in2" : "mm2"),
    speed: unit(inches ? "ft/s" : "m/s"),
    time: column("settle") ?? column("read") ?? unit("s"),
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
