// Turns computed runs into the machine output of `table`.
import { columnValues } from "../calc/column-values.ts";
import { type NamedValue, pointValues } from "../calc/points/point-values.ts";
import { summary } from "../calc/summary.ts";
import type {
  ReportQuantity,
  TablePlateCheck,
  TablePoint,
  TableReport,
  TableRun,
} from "../messages/report.ts";
import { SCHEMA_VERSION } from "../messages/schema-version.ts";
import type { RowResult, RunResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import type { Quantity } from "../quantity/quantity.ts";
import { type DisplayUnits, displayUnits, unit } from "./display-units.ts";
import { ladderReport } from "./ladder-report.ts";
import { agrees } from "./plate-table.ts";
import { reported, reportedOrNull } from "./reported.ts";
import { resultUnit } from "./result-unit.ts";
import { rounded } from "./rounded.ts";
import type { PlateInput, TableInput } from "./table-input.ts";
import { traceReport } from "./trace-report.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

/**
 * The report of a file's runs, as JSON data: values in the units of the record, or in those asked for, and in SI, 12
 * significant digits, `null` for what is not stated or cannot be computed. Void points are there and say so.
 */
export function tableReport(input: TableInput): TableReport {
  const { file, runs, plates, startLine, findingsOf, wanted = [], traces = [], ladders = [] } = input;
  return {
    schemaVersion: SCHEMA_VERSION,
    file,
    runs: runs.map((run) => {
      const units = displayUnits(run.setup, wanted);
      const points = run.rows.map((result) =>
        pointOf(run, result, units, startLine(run), findingsOf(run, result)),
      );
      return { ...factsOf(run.setup, wanted), points, summary: summaryOf(run, units) };
    }),
    plateChecks: plates.map(plateOf),
    traces: traces.map((trace) => traceReport(trace, wanted)),
    ladders: ladders.map((ladder) => ladderReport(ladder, wanted)),
  };
}

function plateOf({ result, startLine, findings }: PlateInput): TablePlateCheck {
  const { plate, setup, comparison } = result;
  const certificate = plate?.flow;
  const { difference, uncertainty, en } = comparison ?? {};
  return {
    line: startLine + 1,
    plate: setup.run.id === "" ? null : setup.run.id,
    bench: setup.bench?.id ?? null,
    date: setup.date?.value ?? null,
    certified: certificate === undefined ? null : written(certificate.flow),
    depression: certificate === undefined ? null : written(certificate.depression),
    reference: setup.reference?.value.name ?? null,
    readings: comparison?.readings ?? 0,
    flow: certificate === undefined ? null : reportedOrNull(comparison?.flow, certificate.flow.unit),
    difference: roundedOrNull(difference),
    uncertainty: roundedOrNull(uncertainty),
    en: roundedOrNull(en),
    agrees: difference === undefined || uncertainty === undefined ? null : agrees(difference, uncertainty),
    findings: [...findings],
  };
}

function roundedOrNull(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : rounded(value);
}

function factsOf(setup: Setup, wanted: WantedUnits): Omit<TableRun, "points" | "summary"> {
  const { run, port, bench } = setup;
  return {
    id: run.id,
    title: run.title ?? null,
    port: port?.id ?? null,
    side: port?.side ?? null,
    cylinder: run.cylinder ?? null,
    stage: run.stage ?? null,
    bench: bench?.id ?? null,
    date: setup.date?.value ?? null,
    direction: setup.direction.value,
    target: pressureOf(setup.target.value, wanted),
    quote: pressureOf(setup.quote.value, wanted),
    reference: setup.reference?.value.name ?? null,
    air: airOf(setup),
  };
}

/** In the units that the air was written in; an altimeter setting gives the unit of the station pressure. */
function airOf({ air: { value: air }, statedAir }: Setup): TableRun["air"] {
  const stated = statedAir?.value;
  const temperature = stated?.temperature?.unit ?? unit("degC");
  const pressure = (stated?.pressure ?? stated?.altimeter)?.unit ?? unit("Pa");
  const density = rounded(air.density);
  return {
    density: { value: density, unit: "kg/m3", si: density },
    temperature: reported(air.temperature, temperature),
    pressure: reported(air.pressure, pressure),
  };
}

function pointOf(
  run: RunResult,
  result: RowResult,
  units: DisplayUnits,
  startLine: number,
  findings: readonly string[],
): TablePoint {
  const { row } = result;
  const settle = columnValues(run.setup.run.table, "settle")?.value(row);
  return {
    line: startLine + row.line + 1,
    void: row.void !== undefined,
    lift: reportedOrNull(result.lift, units.lift),
    depression: reportedOrNull(result.depression, units.depression),
    ...nested(pointValues({ result, setup: run.setup }), units),
    settle: reportedOrNull(settle, units.time),
    findings: [...findings],
  };
}

/** Values under the keys of their paths; one level of groups is all that ids can ask for. */
function nested(values: readonly NamedValue[], units: DisplayUnits): Record<string, unknown> {
  const top = new Map<string, unknown>();
  const groups = new Map<string, [string, unknown][]>();
  for (const named of values) {
    const [key = "", member] = named.path;
    const value = jsonValue(named, units);
    if (member === undefined) {
      top.set(key, value);
      continue;
    }
    const group = groups.get(key) ?? [];
    group.push([member, value]);
    groups.set(key, group);
    top.set(key, undefined);
  }
  for (const [key, members] of groups) top.set(key, Object.fromEntries(members));
  return Object.fromEntries(top);
}

function jsonValue({ value, dimension }: NamedValue, units: DisplayUnits): ReportQuantity | number | null {
  if (value === undefined || !Number.isFinite(value)) return null;
  return dimension === "none" ? rounded(value) : reported(value, resultUnit(units, dimension));
}

function summaryOf(run: RunResult, units: DisplayUnits): TableRun["summary"] {
  const { peak, mean, bands, event, time } = summary(run);
  const flow = (value: number) => reported(value, units.flow);
  return {
    peak: peak === undefined ? null : { lift: reported(peak.lift, units.lift), flow: flow(peak.flow) },
    mean: reportedOrNull(mean?.flow, units.flow),
    bands:
      bands === undefined
        ? null
        : { low: flow(bands.low), middle: flow(bands.middle), high: flow(bands.high) },
    eventMean: reportedOrNull(event && "flow" in event ? event.flow : undefined, units.flow),
    time: reportedOrNull(time, units.time),
    problems: event && "missing" in event ? [event.missing] : [],
  };
}

function pressureOf({ value, unit: own }: Quantity, wanted: WantedUnits): ReportQuantity {
  return reported(value, wantedUnit(wanted, "pressure") ?? own);
}

function written({ value, unit }: Quantity): ReportQuantity {
  return reported(value, unit);
}
