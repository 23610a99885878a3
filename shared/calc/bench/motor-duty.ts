// How much of its motors a bench needs for the flow that it moves: what is left tells when a port outgrows it.
import { fromSI, type Unit } from "../../quantity/unit.ts";
import { largest, median } from "../median.ts";
import type { BenchReading } from "./bench-visits.ts";
import { bandClasses } from "./classes.ts";

/** `from` and `to` in the unit asked for; duties as shares of one. */
export interface DutyClass {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly median: number;
  readonly highest: number;
}

/** By the flow that the meter passed; empty where no reading notes the duty. */
export function motorDuty(readings: readonly BenchReading[], flow: Unit): readonly DutyClass[] {
  const noted = readings.filter(({ duty }) => duty !== undefined);
  const classes = bandClasses(noted, ({ result }) =>
    result.flow === undefined ? undefined : fromSI(result.flow.measured, flow),
  );
  return classes.flatMap(({ from, to, members }): readonly DutyClass[] => {
    const duties = members.flatMap(({ duty }) => duty ?? []);
    const middle = median(duties);
    const highest = largest(duties);
    if (middle === undefined || highest === undefined) return [];
    return [{ from, to, count: duties.length, median: middle, highest }];
  });
}
