// Everything that the records of a shop say of one bench, put together.
import type { Bench } from "../../model/model.ts";
import type { Unit } from "../../quantity/unit.ts";
import { columnValues } from "../column-values.ts";
import { type BenchReading, type BenchVisits, benchReadings } from "./bench-visits.ts";
import { type BetweenDays, betweenDays } from "./between-days.ts";
import { type LeakHistory, leakHistory } from "./leak-history.ts";
import { type DutyClass, motorDuty } from "./motor-duty.ts";
import { type PlateHistory, plateHistories } from "./plate-history.ts";
import { type SettleTimes, settleTimes } from "./settle-classes.ts";
import { LEAST_TIMED, type QuickestBench, type SuggestedLine, suggestedLines } from "./suggested-lines.ts";
import { type SweepTime, sweepTimes } from "./sweep-times.ts";
import { targetHolding } from "./target-holding.ts";
import { type WithinCell, withinCell } from "./within-cell.ts";

/** The units in which readings are put into classes: those that the bench's records use. */
export interface ClassUnits {
  readonly lift: Unit;
  readonly flow: Unit;
}

export interface BenchReport {
  readonly bench: Bench;
  readonly records: number;
  readonly runs: number;
  readonly readings: number;
  readonly first: string | undefined;
  readonly last: string | undefined;
  readonly settle: SettleTimes | undefined;
  readonly sweeps: readonly SweepTime[];
  readonly within: WithinCell | undefined;
  readonly between: BetweenDays | undefined;
  readonly plates: readonly PlateHistory[];
  readonly leak: LeakHistory | undefined;
  readonly duty: readonly DutyClass[];
  readonly lines: readonly SuggestedLine[];
}

/** A bench's records and the units of its readers. */
export interface BenchInput {
  readonly visits: BenchVisits;
  readonly units: ClassUnits;
}

/** Repeatability where a bench has no repeats and claims none (common practice, no published source). */
const DEFAULT_DEVIATION = 0.01;

/** The reports of all benches of a shop: how quick one is shows beside the others. */
export function benchReports(inputs: readonly BenchInput[]): readonly BenchReport[] {
  const known = inputs.map(({ visits, units }) => {
    const readings = benchReadings(visits);
    return { visits, units, readings, settle: settleTimes(readings, units.lift, units.flow) };
  });
  const quickest = known.reduce<QuickestBench | undefined>((best, { visits, settle }) => {
    if (settle === undefined || settle.count < LEAST_TIMED) return best;
    const isQuicker = best === undefined || settle.median < best.usual;
    return isQuicker ? { bench: visits.bench.id, usual: settle.median } : best;
  }, undefined);
  return known.map(({ visits, units, readings, settle }): BenchReport => {
    const within = withinCell(visits);
    const repeat = within?.deviation ?? visits.bench.repeat?.value ?? DEFAULT_DEVIATION;
    const holding = targetHolding(readings, depressionStep);
    const dates = visits.visits.flatMap(({ date }) => date ?? []);
    return {
      bench: visits.bench,
      records: visits.visits.length,
      runs: visits.visits.reduce((sum, { runs }) => sum + runs.length, 0),
      readings: readings.length,
      first: dates[0],
      last: dates.at(-1),
      settle,
      sweeps: sweepTimes(visits),
      within,
      between: betweenDays(visits, repeat),
      plates: plateHistories(visits),
      leak: leakHistory(visits),
      duty: motorDuty(readings, units.flow),
      lines: suggestedLines({ within, settle, holding, quickest }),
    };
  });
}

function depressionStep({ run, result }: BenchReading): number {
  return columnValues(run.setup.run.table, "depression")?.step(result.row) ?? 0;
}
