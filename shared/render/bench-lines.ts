// The lines that a bench block should have, as they can be pasted into it, each under a comment with its reason.
import type { Reason, SuggestedLine } from "../calc/bench/suggested-lines.ts";
import type { WithinCell } from "../calc/bench/within-cell.ts";
import type { Bench } from "../model/model.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import type { BenchUnits } from "./bench-units.ts";
import { quantityWords } from "./run-facts.ts";

/** A line without its indent; `text` is missing where the records say too little. */
export interface BenchLine {
  readonly keyword: SuggestedLine["keyword"];
  readonly text: string | undefined;
  readonly reason: string;
}

const SIGNIFICANT = 2;
/** With fewer, limits by Student's t would be 5 % and more wider than by the normal distribution. */
const FEW_DEGREES = 20;
/** Where the values of a block stand. */
const STOP = 11;

export function benchLines(
  bench: Bench,
  lines: readonly SuggestedLine[],
  units: BenchUnits,
): readonly BenchLine[] {
  return lines.map((line) => {
    const value = valueWords(line, units);
    const stated = bench[line.keyword];
    const states =
      stated === undefined ? "the block states none" : `the block states ${quantityWords(stated)}`;
    return {
      keyword: line.keyword,
      text: value === undefined ? undefined : `${line.keyword.padEnd(STOP)}${value}`,
      reason: `${reasonWords(line.keyword, line.reason, units)}; ${states}`,
    };
  });
}

function valueWords({ keyword, value, reason }: SuggestedLine, units: BenchUnits): string | undefined {
  if (value === undefined) return undefined;
  if (keyword === "repeat") return shareWords(value);
  if (reason.kind !== "held") return secondsWords(value);
  return pressureWords(value, reason.holding.step, units);
}

function reasonWords(keyword: string, reason: Reason, units: BenchUnits): string {
  switch (reason.kind) {
    case "too-few":
      return `${keyword}: no suggestion, it needs ${reason.need} ${WANTED[keyword] ?? "readings"} and the records have ${reason.have}`;
    case "pooled": {
      const { degreesOfFreedom, low, high } = reason.found;
      const few =
        degreesOfFreedom < FEW_DEGREES
          ? "; so few repeats do not tell it well, and a stated value counts as certain: read more points twice first"
          : "";
      return `pooled from ${repeatWords(reason.found)} (${freedomWords(degreesOfFreedom)}; 95 %: ${shareWords(low)} to ${shareWords(high)})${few}`;
    }
    case "median":
      return `the median of ${reason.count} timed readings`;
    case "usual":
      return `1.5 times the usual ${secondsWords(reason.usual)}; no bench in these records is quicker`;
    case "quickest":
      return `1.5 times the usual ${secondsWords(reason.quickest)} of bench '${reason.bench}'; this bench usually takes ${secondsWords(reason.usual)}, which may carry a port over an edge that the other shows`;
    case "held": {
      const { readings, off, step } = reason.holding;
      const held =
        off > 0
          ? `within ${pressureWords(off, step, units)} of the target`
          : "at the target to the last digit";
      return `95 % of ${readings} readings are ${held}; the band costs at most ${shareWords(reason.cost)} in flow if it is read at its edge and not corrected`;
    }
  }
}

export function repeatWords({ cells, plateCells }: Pick<WithinCell, "cells" | "plateCells">): string {
  if (cells === 1)
    return plateCells === 1 ? "one check plate read more than once" : "one point read more than once";
  const plates =
    plateCells === 0 ? "" : `, of them ${plateCells} ${plateCells === 1 ? "check plate" : "check plates"}`;
  return `${cells} points read more than once${plates}`;
}

export function freedomWords(degrees: number): string {
  return degrees === 1 ? "1 degree of freedom" : `${degrees} degrees of freedom`;
}

const WANTED: Readonly<Record<string, string>> = {
  repeat: "degrees of freedom",
  settle: "timed readings",
  quick: "timed readings",
  within: "depressions",
};

/** A share in percent with two significant digits. */
export function shareWords(share: number): string {
  return `${significant(100 * share)} %`;
}

export function secondsWords(seconds: number): string {
  return `${significant(seconds)} s`;
}

/** Rounded up to the size of the written digit, so that what was held still is. */
function pressureWords(value: number, step: number, { depression }: BenchUnits): string {
  const size = step > 0 ? step / depression.factor : 0;
  const inUnit = fromSI(value, depression);
  // What other units leave behind is no step of its own.
  if (!(size > 0)) return `${significant(inUnit)} ${depression.symbol}`;
  const rounded = Math.ceil(inUnit / size - 1e-6) * size;
  const decimals = Math.min(6, Math.max(0, Math.ceil(-Math.log10(size) - 1e-9)));
  return `${formatFixed(rounded, decimals)} ${depression.symbol}`;
}

function significant(value: number): string {
  if (!(value > 0)) return formatFixed(value, 1);
  const decimals = Math.max(0, SIGNIFICANT - 1 - Math.floor(Math.log10(value)));
  return formatFixed(value, Math.min(6, decimals));
}
