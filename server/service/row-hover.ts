// One reading explained: its result, and the way from the display to it with the numbers put in.
import { columnValues, columnWords } from "../../shared/calc/column-values.ts";
import { findMeter } from "../../shared/calc/meters/index.ts";
import { pointValues } from "../../shared/calc/points/point-values.ts";
import { testFlux } from "../../shared/calc/test-flux.ts";
import type { RowResult, RunResult } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { resultUnit } from "../../shared/render/result-unit.ts";
import { correctedFlowHead } from "../../shared/render/run-facts.ts";
import { shownNumber, shownRatio, shownUncertainty } from "../../shared/render/shown-number.ts";
import type { ComputedRun } from "../analysis/project.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { figures, inUnit, percent } from "../rules/words.ts";
import { escaped } from "./markdown.ts";
import { portWords } from "./port-words.ts";

/** Markdown for a reading; `traces` are those of its run. All text of the record in it is escaped. */
export function rowHover(
  { result }: ComputedRun,
  row: RowResult,
  traces: () => readonly ComputedTrace[],
): string {
  const { setup } = result;
  if (row.row.void !== undefined) return `**void**${row.row.void === "" ? "" : `: ${escaped(row.row.void)}`}`;
  if (row.flow === undefined)
    return "no result: the bench, the depression or the display's number is missing";
  const units = displayUnits(setup);
  const flow = fromSI(row.flow.corrected, units.flow);
  const uncertainty =
    row.uncertainty === undefined ? "" : ` ± ${shownUncertainty(Math.abs(flow * row.uncertainty))}`;
  const head = `**${shownNumber(flow, row.uncertainty)}${uncertainty} ${units.flow.symbol}** ${escaped(correctedFlowHead(setup))}`;
  const values = pointValues({ result: row, setup }).flatMap(({ path, title, dimension, value }) => {
    if (value === undefined || path[0] === "correctedFlow" || path[0] === "uncertainty") return [];
    if (dimension === "none") return [`${escaped(title)} ${shownRatio(value)}`];
    const unit = resultUnit(units, dimension);
    return [`${escaped(title)} ${figures(fromSI(value, unit))} ${unit.symbol}`];
  });
  return [
    head,
    values.join(" · "),
    portWords(result, row, traces)
      .map((words) => escaped(words))
      .join("\n\n"),
    chain(row, result)
      .map((step) => `- ${step}`)
      .join("\n"),
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

/** The steps from the display to corrected flow, each with its numbers. */
function chain(result: RowResult, { setup }: RunResult): readonly string[] {
  const { flow, depression } = result;
  if (flow === undefined || depression === undefined) return [];
  const { flow: unit, depression: pressure } = displayUnits(setup);
  const show = (value: number) => `${figures(fromSI(value, unit))} ${unit.symbol}`;
  const quote = setup.quote.value;
  const scale = Math.sqrt(quote.value / depression);
  const { density } = setup.air.value;
  const steps: string[] = [];
  const { benchAir } = setup;
  const thinning = benchAir === undefined ? 1 : Math.sqrt(benchAir.state.density / density);
  const display = displayWords(result, setup);
  steps.push(
    `${display} at ${inUnit(depression, pressure)}, through the meter: ${show(flow.measured / thinning)}`,
  );
  if (benchAir !== undefined) {
    steps.push(
      `whose numbers are true in ${escaped(benchAir.name)}: ${densityStep(benchAir.state.density, density)} = ${show(flow.measured)}`,
    );
  }
  if (flow.leak !== 0) steps.push(`less the leak there, ${show(flow.leak)}: ${show(flow.port)}`);
  steps.push(
    `to ${quote.text} ${quote.unit.symbol} by the square root: × ${formatFixed(scale, 4)} = ${show(flow.port * scale)}`,
  );
  const reference = setup.reference?.value;
  if (reference !== undefined) {
    steps.push(
      `to ${escaped(reference.name)}: ${densityStep(density, reference.state.density)} = ${show(flow.corrected)}`,
    );
  }
  const compressible = compressibleScale(setup, depression);
  if (compressible !== undefined && Math.abs(compressible / scale - 1) > 5e-4) {
    steps.push(
      `an ideal nozzle would scale by ${formatFixed(compressible, 4)} instead, ${percent(scale / compressible - 1)} apart`,
    );
  }
  return steps;
}

/** The display's number as it was written. */
function displayWords({ row }: RowResult, { run, bench }: Setup): string {
  const meter = bench?.shows && findMeter(bench.shows.kind);
  const column = run.table?.columns.find(({ name }) => name === meter?.column);
  const text = meter === undefined ? undefined : columnValues(run.table, meter.column)?.cell(row)?.text;
  const range = columnWords(run.table, "range")?.(row);
  const on = range === undefined ? "" : ` on range ${escaped(range)}`;
  return `display ${escaped(text ?? "")} ${column?.unit?.symbol ?? ""}${on}`;
}

/** The same port at the same depression passes volume in proportion to the root of the air's specific volume. */
function densityStep(from: number, to: number): string {
  return `× √(${formatFixed(from, 4)} / ${formatFixed(to, 4)}) = × ${formatFixed(Math.sqrt(from / to), 4)}`;
}

/**
 * What the flow of an ideal nozzle is multiplied by from one depression to the quoted one, as a volume of the entering air
 * (isentropic flow; Heywood (1988), equations C.8 and C.9).
 */
function compressibleScale({ direction, air, quote }: Setup, depression: number): number | undefined {
  const flux = (dp: number) => testFlux(direction.value, air.value, dp);
  const here = flux(depression);
  const there = flux(quote.value.value);
  return here === undefined || there === undefined || !(here > 0) ? undefined : there / here;
}
