// Turns the histories of benches into the machine output of `bench`.
import type { BetweenDays } from "../calc/bench/between-days.ts";
import type { LeakHistory } from "../calc/bench/leak-history.ts";
import type { PlateHistory } from "../calc/bench/plate-history.ts";
import type { SettleClass, SettleTimes } from "../calc/bench/settle-classes.ts";
import type { SweepTime } from "../calc/bench/sweep-times.ts";
import type { WithinCell } from "../calc/bench/within-cell.ts";
import type { BenchDocument, BenchEntry } from "../messages/bench-report.ts";
import type { ReportQuantity } from "../messages/report.ts";
import { SCHEMA_VERSION } from "../messages/schema-version.ts";
import { fromSI, toSI, type Unit } from "../quantity/unit.ts";
import { benchLines } from "./bench-lines.ts";
import type { BenchPage } from "./bench-text.ts";
import type { BenchUnits } from "./bench-units.ts";
import { displayUnits, unit } from "./display-units.ts";
import { rounded } from "./rounded.ts";

const SECOND = unit("s");

/** The report as JSON data: values in the units of the records and in SI, shares as bare numbers, 12 significant digits. */
export function benchDocument(pages: readonly BenchPage[]): BenchDocument {
  return { schemaVersion: SCHEMA_VERSION, benches: pages.map(entryOf) };
}

function entryOf({ report, units }: BenchPage): BenchEntry {
  const { bench, within, between, settle, leak } = report;
  return {
    id: bench.id,
    title: bench.title ?? null,
    records: report.records,
    runs: report.runs,
    readings: report.readings,
    first: report.first ?? null,
    last: report.last ?? null,
    settle: settle === undefined ? null : settleOf(settle, units),
    sweeps: report.sweeps.map(sweepOf),
    repeatability: within === undefined ? null : repeatabilityOf(within),
    reproducibility: between === undefined ? null : reproducibilityOf(between),
    plates: report.plates.map(plateOf),
    leak: leak === undefined ? null : leakOf(leak, units),
    duty: report.duty.map(({ from, to, count, median, highest }) => ({
      from: inClass(from, units.flow),
      to: inClass(to, units.flow),
      readings: count,
      median: rounded(median),
      highest: rounded(highest),
    })),
    suggestions: benchLines(bench, report.lines, units).map(({ keyword, text, reason }) => ({
      keyword,
      line: text ?? null,
      reason,
    })),
  };
}

function settleOf(settle: SettleTimes, units: BenchUnits): NonNullable<BenchEntry["settle"]> {
  return {
    ...timesOf(settle),
    byLift: settle.byLift.map((entry) => classOf(entry, units.lift)),
    byFlow: settle.byFlow.map((entry) => classOf(entry, units.flow)),
  };
}

function classOf(entry: SettleClass, of: Unit) {
  return { from: inClass(entry.from, of), to: inClass(entry.to, of), ...timesOf(entry) };
}

function timesOf({ count, median, slowest }: Pick<SettleClass, "count" | "median" | "slowest">) {
  return { readings: count, median: quantity(median, SECOND), slowest: quantity(slowest, SECOND) };
}

function sweepOf(sweep: SweepTime): BenchEntry["sweeps"][number] {
  const { side, runs, rows, low, middle, high, repeats, voids, waiting } = sweep;
  return {
    side,
    runs,
    rows,
    median: quantity(sweep.median, SECOND),
    longest: quantity(sweep.longest, SECOND),
    perRow: quantity(sweep.perRow, SECOND),
    shares: {
      low: rounded(low),
      middle: rounded(middle),
      high: rounded(high),
      repeats: rounded(repeats),
      voids: rounded(voids),
      afterSettling: waiting === undefined ? null : rounded(waiting),
    },
  };
}

function repeatabilityOf(within: WithinCell): NonNullable<BenchEntry["repeatability"]> {
  const { deviation, degreesOfFreedom, low, high, cells, plateCells, claimed, verdict } = within;
  return {
    deviation: rounded(deviation),
    degreesOfFreedom,
    low: rounded(low),
    high: rounded(high),
    cells,
    plateCells,
    claimed: claimed === undefined ? null : rounded(claimed),
    verdict: verdict ?? null,
  };
}

function reproducibilityOf({
  deviation,
  between,
  within,
  levels,
  subjects,
  sessions,
  widest,
}: BetweenDays): NonNullable<BenchEntry["reproducibility"]> {
  const { range, subject, lift, run } = widest;
  return {
    deviation: rounded(deviation),
    between: rounded(between),
    within: rounded(within),
    levels,
    subjects,
    sessions,
    widest: { range: rounded(range), subject, lift: quantity(lift, displayUnits(run.setup).lift) },
  };
}

function plateOf({ plate, points, limits, drift }: PlateHistory): BenchEntry["plates"][number] {
  return {
    plate,
    checks: points.map(({ file, date, readings, difference, uncertainty, en, isOut }) => ({
      file,
      date: date ?? null,
      readings,
      difference: rounded(difference),
      uncertainty: uncertainty === undefined ? null : rounded(uncertainty),
      en: en === undefined ? null : rounded(en),
      outsideLimits: isOut,
    })),
    limits:
      limits === undefined
        ? null
        : {
            centre: rounded(limits.centre),
            low: rounded(limits.low),
            high: rounded(limits.high),
            movingRange: rounded(limits.movingRange),
          },
    drift:
      drift === undefined
        ? null
        : {
            perYear: rounded(drift.perYear),
            halfWidth: rounded(drift.halfWidth),
            resolved: drift.isResolved,
          },
  };
}

function leakOf(leak: LeakHistory, units: BenchUnits): NonNullable<BenchEntry["leak"]> {
  return {
    depression: quantity(leak.depression, units.depression),
    median: quantity(leak.median, units.flow),
    largest: quantity(leak.largest, units.flow),
    readings: leak.points.map(({ file, date, port, flow }) => ({
      file,
      date: date ?? null,
      port: port ?? null,
      flow: quantity(flow, units.flow),
    })),
  };
}

function quantity(si: number, of: Unit): ReportQuantity {
  return { value: rounded(fromSI(si, of)), unit: of.symbol, si: rounded(si) };
}

/** A border that is already in its unit. */
function inClass(value: number, of: Unit): ReportQuantity {
  return { value: rounded(value), unit: of.symbol, si: rounded(toSI(value, of)) };
}
