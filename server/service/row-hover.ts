// One reading explained: its result, and the way from the display to it with the numbers put in.
import { flowFunction } from "../../shared/calc/nozzle-flow.ts";
import { pointValues } from "../../shared/calc/points/point-values.ts";
import { testPressures } from "../../shared/calc/test-pressures.ts";
import type { RowResult } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { resultUnit } from "../../shared/render/result-unit.ts";
import { correctedFlowHead } from "../../shared/render/run-facts.ts";
import { shownNumber, shownRatio, shownUncertainty } from "../../shared/render/shown-number.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { figures, inUnit, percent } from "../rules/words.ts";
import { escaped } from "./markdown.ts";

/** Markdown for a reading; all text of the record in it is escaped. */
export function rowHover({ result }: ComputedRun, row: RowResult): string {
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
    chain(row, setup)
      .map((step) => `- ${step}`)
      .join("\n"),
  ].join("\n\n");
}

/** The steps from the display to corrected flow, each with its numbers. */
function chain({ flow, depression }: RowResult, setup: Setup): readonly string[] {
  if (flow === undefined || depression === undefined) return [];
  const { flow: unit, depression: pressure } = displayUnits(setup);
  const show = (value: number) => `${figures(fromSI(value, unit))} ${unit.symbol}`;
  const quote = setup.quote.value;
  const scale = Math.sqrt(quote.value / depression);
  const steps = [`through the meter at ${inUnit(depression, pressure)}: ${show(flow.measured)}`];
  if (flow.leak !== 0) steps.push(`less the leak there, ${show(flow.leak)}: ${show(flow.port)}`);
  steps.push(
    `to ${quote.text} ${quote.unit.symbol} by the square root: × ${formatFixed(scale, 4)} = ${show(flow.port * scale)}`,
  );
  const reference = setup.reference?.value;
  if (reference !== undefined) {
    const density = setup.air.value.density / reference.state.density;
    steps.push(
      `to ${escaped(reference.name)}: × √(${formatFixed(setup.air.value.density, 4)} / ${formatFixed(reference.state.density, 4)}) = × ${formatFixed(Math.sqrt(density), 4)} = ${show(flow.corrected)}`,
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

/**
 * What the flow of an ideal nozzle is multiplied by from one depression to the quoted one, as a volume of the entering air
 * (isentropic flow; Heywood (1988), equations C.8 and C.9).
 */
function compressibleScale({ direction, air, quote }: Setup, depression: number): number | undefined {
  const flux = (dp: number) => {
    const { p0, rho0, ratio } = testPressures(direction.value, air.value, dp);
    const psi = flowFunction(ratio);
    return psi === undefined ? undefined : psi * Math.sqrt(p0 * rho0);
  };
  const here = flux(depression);
  const there = flux(quote.value.value);
  return here === undefined || there === undefined || !(here > 0) ? undefined : there / here;
}
