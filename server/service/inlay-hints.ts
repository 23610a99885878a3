// Values shown behind the end of a row, where they move no text.

import { portArea } from "../../shared/calc/port-areas.ts";
import { widening } from "../../shared/calc/repeatability.ts";
import type { RowResult, RunResult, Station } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { shownNumber, shownUncertainty } from "../../shared/render/shown-number.ts";
import type { Analysis } from "../analysis/project.ts";
import { percent } from "../rules/words.ts";

/** A tenth of a micrometre: closer than any dial reads, wider than inches and millimetres round apart, m. */
const SAME_LIFT = 1e-7;
const ROUNDING = 1e-9;

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

/**
 * Gain over the baseline's station of the same lift and direction. There is none where the two are quoted at different
 * depressions or in different air; one within the noise is said to be that.
 */
function gainHint(row: RowResult, result: RunResult, baseline: RunResult | undefined): readonly string[] {
  if (baseline === undefined || !isQuotedAlike(result.setup, baseline.setup)) return [];
  const own = stationAt(result, row);
  const theirs = stationAt(baseline, row);
  if (own === undefined || theirs === undefined || !(theirs.flow > 0)) return [];
  const gain = own.flow / theirs.flow - 1;
  const noise =
    TWO_SIDED_95 * Math.hypot(spread(result, own), spread(baseline, theirs), scale(result, baseline));
  const sign = gain < 0 ? "" : "+";
  return [`${sign}${percent(gain)}${Math.abs(gain) <= noise ? " (noise)" : ""}`];
}

function isQuotedAlike(a: Setup, b: Setup): boolean {
  const density = ({ reference, air }: Setup) => (reference?.value.state ?? air.value).density;
  return (
    Math.abs(a.quote.value.value / b.quote.value.value - 1) < ROUNDING &&
    Math.abs(density(a) / density(b) - 1) < ROUNDING
  );
}

/** Standard deviation of a station's mean, relative; wider where the bench's repeatability is itself but estimated. */
function spread({ repeatability }: RunResult, { rows }: Station): number {
  return (repeatability.deviation * widening(repeatability)) / Math.sqrt(rows.length);
}

/** Standard uncertainty of the two flow scales, relative: one bench is wrong by as much both times. */
function scale({ setup: { bench: own } }: RunResult, { setup: { bench: theirs } }: RunResult): number {
  if (own?.id === theirs?.id) return 0;
  return Math.hypot(own?.uncertainty?.value ?? 0, theirs?.uncertainty?.value ?? 0) / 2;
}

function stationAt({ rising, falling }: RunResult, { lift, branch }: RowResult): Station | undefined {
  if (lift === undefined) return undefined;
  const stations = branch === "falling" ? falling : rising;
  return stations.find((station) => Math.abs(station.lift - lift) <= SAME_LIFT);
}
