// Values shown behind the end of a row, where they move no text.

import { gainAt, isSameLift, isWithinNoise } from "../../shared/calc/gain.ts";
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

/** Gain over the baseline's station of the same lift and direction; one within the noise is said to be that. */
function gainHint(row: RowResult, result: RunResult, baseline: RunResult | undefined): readonly string[] {
  const station = baseline && stationOf(result, row);
  const gain = station && gainAt(station, result, baseline);
  if (gain === undefined) return [];
  const sign = gain.gain < 0 ? "" : "+";
  return [`${sign}${percent(gain.gain)}${isWithinNoise(gain) ? " (noise)" : ""}`];
}

function stationOf({ rising, falling }: RunResult, row: RowResult): Station | undefined {
  return (row.branch === "falling" ? falling : rising).find((station) => isSameLift(station.lift, row.lift));
}
