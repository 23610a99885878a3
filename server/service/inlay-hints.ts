// Values shown behind the end of a row, where they move no text.

import { gainAt, isSameLift, isWithinNoise } from "../../shared/calc/gain.ts";
import { portArea } from "../../shared/calc/port-areas.ts";
import type { RowResult, RunResult, Station } from "../../shared/model/result.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { correctedFlowHead } from "../../shared/render/run-facts.ts";
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
  /** What the numbers are, since a label has room for these only. */
  readonly meaning: string;
}

/** One number of a hint. */
interface Part {
  readonly label: string;
  readonly meaning: string;
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
      const parts = [
        ...(kinds.flow ? [flowHint(row, result)] : []),
        ...(kinds.cd ? cdHint(row, result) : []),
        ...gainHint(row, result, baseline),
      ];
      if (parts.length === 0) return [];
      const label = parts.map((part) => part.label).join("  ");
      const meaning = parts.map((part) => part.meaning).join("\n");
      return [{ line, column: outline.lines[line]?.text.length ?? row.row.to, label, meaning }];
    });
  });
}

function flowHint(row: RowResult, { setup }: RunResult): Part {
  const { flow: unit } = displayUnits(setup);
  const flow = fromSI(row.flow?.corrected ?? 0, unit);
  const uncertainty =
    row.uncertainty === undefined ? "" : ` ± ${shownUncertainty(Math.abs(flow * row.uncertainty))}`;
  return {
    label: `${shownNumber(flow, row.uncertainty)}${uncertainty} ${unit.symbol}`,
    meaning: `${correctedFlowHead(setup)}${uncertainty === "" ? "" : ", ± its uncertainty (k = 2)"}`,
  };
}

function cdHint({ lift, effectiveArea }: RowResult, { setup }: RunResult): readonly Part[] {
  const curtain = setup.port && lift !== undefined ? portArea("curtain", setup.port, lift) : undefined;
  return curtain === undefined || effectiveArea === undefined
    ? []
    : [
        {
          label: `Cd curtain ${formatFixed(effectiveArea / curtain, 3)}`,
          meaning: "discharge coefficient on the curtain area",
        },
      ];
}

/** Gain over the baseline's station of the same lift and direction; one within the noise is said to be that. */
function gainHint(row: RowResult, result: RunResult, baseline: RunResult | undefined): readonly Part[] {
  const station = baseline && stationOf(result, row);
  const gain = station && gainAt(station, result, baseline);
  if (gain === undefined || baseline === undefined) return [];
  const sign = gain.gain < 0 ? "" : "+";
  const isNoise = isWithinNoise(gain);
  return [
    {
      label: `${sign}${percent(gain.gain)}${isNoise ? " (noise)" : ""}`,
      meaning: `gain over ${baseline.setup.run.id} at this lift${isNoise ? ", which chance alone can make" : ""}`,
    },
  ];
}

function stationOf({ rising, falling }: RunResult, row: RowResult): Station | undefined {
  return (row.branch === "falling" ? falling : rising).find((station) => isSameLift(station.lift, row.lift));
}
