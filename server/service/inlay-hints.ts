// Values shown behind the end of a row, where they move no text.

import { portArea } from "../../shared/calc/port-areas.ts";
import type { RowResult, RunResult, Station } from "../../shared/model/result.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { shownNumber, shownUncertainty } from "../../shared/render/shown-number.ts";
import type { Analysis } from "../analysis/project.ts";
import { percent } from "../rules/words.ts";

export interface HintKinds {
  readonly flow: boolean;
  readonly cd: boolean;
  readonly gain: boolean;
}

export interface InlayHint {
  readonly line: number;
  readonly column: number;
  readonly label: string;
}

/** Two-sided 95 % point of the normal distribution: a gain below it is within what the bench resolves. */
const TWO_SIDED_95 = 1.96;

/** The hints of the rows from one line to another, one a row. */
export function inlayHints(
  analysis: Analysis,
  first: number,
  last: number,
  kinds: HintKinds,
  baselineOf: (result: RunResult) => RunResult | undefined,
): readonly InlayHint[] {
  const { outline } = analysis.scope.file;
  return analysis.settled.flatMap((settled) => {
    const { start } = settled.placed;
    const rows = settled.setup.run.table?.rows ?? [];
    const end = start + (rows.at(-1)?.line ?? 0);
    if (end < first || start > last) return [];
    const result = analysis.compute(settled);
    const baseline = kinds.gain ? baselineOf(result) : undefined;
    return result.rows.flatMap((row): InlayHint[] => {
      const line = start + row.row.line;
      if (line < first || line > last || row.row.void !== undefined || row.flow === undefined) return [];
      const label = [
        ...(kinds.flow ? [flowHint(row, result)] : []),
        ...(kinds.cd ? cdHint(row, result) : []),
        ...gainHint(row, result, baseline),
      ].join("  ");
      return label === "" ? [] : [{ line, column: outline.lines[line]?.text.length ?? row.row.to, label }];
    });
  });
}

function flowHint(row: RowResult, { setup }: RunResult): string {
  const { flow: unit } = displayUnits(setup);
  const flow = fromSI(row.flow?.corrected ?? 0, unit);
  const uncertainty =
    row.uncertainty === undefined ? "" : ` ± ${shownUncertainty(Math.abs(flow * row.uncertainty))}`;
  return `${shownNumber(flow, row.uncertainty)}${uncertainty} ${unit.symbol}`;
}

function cdHint({ lift, effectiveArea }: RowResult, { setup }: RunResult): readonly string[] {
  const curtain = setup.port && lift !== undefined ? portArea("curtain", setup.port, lift) : undefined;
  return curtain === undefined || effectiveArea === undefined
    ? []
    : [`Cd curtain ${formatFixed(effectiveArea / curtain, 3)}`];
}

/** Against the baseline's station of the same lift; a gain within the noise is said to be that. */
function gainHint(row: RowResult, result: RunResult, baseline: RunResult | undefined): readonly string[] {
  const own = stationAt(result, row.lift);
  const theirs = baseline && stationAt(baseline, row.lift);
  if (own === undefined || theirs === undefined || baseline === undefined || !(theirs.flow > 0)) return [];
  const gain = own.flow / theirs.flow - 1;
  const noise = Math.hypot(
    result.repeatability.deviation / Math.sqrt(own.rows.length),
    baseline.repeatability.deviation / Math.sqrt(theirs.rows.length),
  );
  const sign = gain < 0 ? "" : "+";
  return [`${sign}${percent(gain)}${Math.abs(gain) <= TWO_SIDED_95 * noise ? " (noise)" : ""}`];
}

function stationAt({ rising }: RunResult, lift: number | undefined): Station | undefined {
  return rising.find((station) => station.lift === lift);
}
