// A station as sentences name it.
import { columnValues } from "../calc/column-values.ts";
import { slowestSettle } from "../calc/settle-times.ts";
import type { RunResult, Station } from "../model/result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";

/** The lift of a station as its first row writes it, with its unit. */
export function stationLift({ setup }: RunResult, { rows, lift }: Pick<Station, "rows" | "lift">): string {
  const unit = displayUnits(setup).lift;
  const [first] = rows;
  const text = first && columnValues(setup.run.table, "lift")?.cell(first.row)?.text;
  return `${text ?? liftText(lift, unit)} ${unit.symbol}`;
}

/** A lift in a unit as a bench would be set to it, without the unit. */
export function liftText(lift: number, unit: Unit): string {
  return formatFixed(fromSI(lift, unit), unit.symbol === "in" ? 3 : 2);
}

/** The slowest settle time of a station, with its unit; `undefined` where none of its rows was timed. */
export function stationSettle(result: RunResult, station: Station): string | undefined {
  const time = slowestSettle(result, station);
  return time === undefined ? undefined : timeText(time, displayUnits(result.setup).time);
}

/** A time to four figures, with its unit. */
export function timeText(time: number, unit: Unit): string {
  return `${Number(fromSI(time, unit).toPrecision(4))} ${unit.symbol}`;
}

/** The stretch of lift that a mean is over, as every sentence about one says it. */
export function overLift({ from, to }: { readonly from: number; readonly to: number }, unit: Unit): string {
  return `over lift ${liftText(from, unit)} to ${liftText(to, unit)} ${unit.symbol}`;
}
