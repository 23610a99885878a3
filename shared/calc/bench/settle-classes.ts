// How long a bench takes to hold its depression, by the lift that it holds it at and by the flow that it moves.
import type { Side } from "../../model/model.ts";
import { fromSI, type Unit } from "../../quantity/unit.ts";
import { largest, median } from "../median.ts";
import type { BenchReading } from "./bench-visits.ts";
import { bandClasses, stationClasses, type ValueClass } from "./classes.ts";
import { sideOf } from "./sweep-times.ts";

/** Times s; `from` and `to` in the unit asked for, alike where the class is one value. */
export interface SettleClass {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly median: number;
  readonly slowest: number;
}

export interface SettlePoint {
  readonly lift: number;
  readonly settle: number;
  readonly side: Side;
}

export interface SettleTimes {
  readonly count: number;
  readonly median: number;
  readonly slowest: number;
  readonly byLift: readonly SettleClass[];
  readonly byFlow: readonly SettleClass[];
  /** Every timed reading with a lift; m and s. */
  readonly points: readonly SettlePoint[];
}

interface Timed {
  readonly reading: BenchReading;
  readonly settle: number;
}

/** The settle times of the readings that have one; `undefined` where none has. Flow is what the meter passed. */
export function settleTimes(
  readings: readonly BenchReading[],
  lift: Unit,
  flow: Unit,
): SettleTimes | undefined {
  const timed = readings.flatMap((reading): readonly Timed[] =>
    reading.settle === undefined ? [] : [{ reading, settle: reading.settle }],
  );
  const all = timesOf(timed);
  if (all === undefined) return undefined;
  const inClasses = (classes: readonly ValueClass<Timed>[]) =>
    classes.flatMap(({ from, to, members }): readonly SettleClass[] => {
      const times = timesOf(members);
      return times === undefined ? [] : [{ from, to, ...times }];
    });
  return {
    ...all,
    points: timed.flatMap(({ reading: { run, result }, settle }): readonly SettlePoint[] =>
      result.lift === undefined ? [] : [{ lift: result.lift, settle, side: sideOf(run) }],
    ),
    byLift: inClasses(stationClasses(timed, ({ reading: { result } }) => inUnit(result.lift, lift))),
    byFlow: inClasses(bandClasses(timed, ({ reading: { result } }) => inUnit(result.flow?.measured, flow))),
  };
}

function timesOf(timed: readonly Timed[]): Pick<SettleClass, "count" | "median" | "slowest"> | undefined {
  const times = timed.map(({ settle }) => settle);
  const middle = median(times);
  const slowest = largest(times);
  return middle === undefined || slowest === undefined
    ? undefined
    : { count: times.length, median: middle, slowest };
}

function inUnit(value: number | undefined, unit: Unit): number | undefined {
  return value === undefined ? undefined : fromSI(value, unit);
}
