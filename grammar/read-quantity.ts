// Reads a number with its unit from the words of a line, and reports what is wrong with either.
import { type Finding, raise } from "../shared/finding.ts";
import { type Dimension, dimensionName } from "../shared/quantity/dimension.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import { readNumber, splitNumberUnit } from "../shared/quantity/number.ts";
import { type Quantity, quantity } from "../shared/quantity/quantity.ts";
import { findUnit, nearestUnits, type Unit, unitsOf } from "../shared/quantity/unit.ts";
import type { Span } from "../shared/text/span.ts";
import { missingUnit } from "./findings/missing-unit.ts";
import { numberForm } from "./findings/number-form.ts";
import { unitSpelling } from "./findings/unit-spelling.ts";
import { unknownUnit } from "./findings/unknown-unit.ts";
import { wrongDimension } from "./findings/wrong-dimension.ts";
import { numberFinding } from "./number-finding.ts";
import type { Atom } from "./tree.ts";

/** What was read, and how many words it took. */
export interface QuantityRead {
  readonly value: Quantity | undefined;
  readonly taken: number;
}

/**
 * Reads a quantity from the first one or two words. `follows` tells whether a word belongs to what comes next, and so is
 * no unit. Several dimensions are those that are still free where the order does not matter; `others` are words that may
 * stand in the place of the number.
 */
export function readQuantity(
  words: readonly Atom[],
  dimensions: readonly Dimension[],
  follows: (word: string) => boolean,
  report: (finding: Finding) => void,
  others: readonly string[] = [],
): QuantityRead {
  const [first, second] = words;
  if (first === undefined) return { value: undefined, taken: 0 };
  if (first.kind === "text") {
    report(quotedNumber(first));
    return { value: undefined, taken: second !== undefined && isUnitWord(second, follows) ? 2 : 1 };
  }
  const split = second !== undefined && isUnitWord(second, follows) ? undefined : splitNumberUnit(first.text);
  const written = split?.number ?? first.text;
  const numberSpan: Span = { line: 0, from: first.from, to: first.from + written.length };
  const attached: Atom | undefined =
    split === undefined ? undefined : { kind: "word", text: split.unit, from: numberSpan.to, to: first.to };
  const unitAtom = attached ?? (second !== undefined && isUnitWord(second, follows) ? second : undefined);
  const taken = attached === undefined && unitAtom !== undefined ? 2 : 1;

  const number = readNumber(written);
  if ("problem" in number) {
    report(
      number.problem === "not-a-number"
        ? noNumber(written, numberSpan, dimensions, others)
        : numberFinding(written, number, numberSpan),
    );
  }
  if (unitAtom === undefined) {
    if (!("problem" in number && number.problem === "not-a-number"))
      report(noUnit(written, numberSpan, dimensions));
    return { value: undefined, taken };
  }
  const unit = readUnit(unitAtom, dimensions, report, unitAtom.from === numberSpan.to ? " " : "");
  if (unit === undefined || "problem" in number) return { value: undefined, taken };
  return { value: quantity(written, number.value, number.step, unit), taken };
}

/**
 * The unit that a word stands for, if it measures one of the dimensions; reports why it does not. `gap` is what a fix puts
 * before the unit: a blank where it is written right behind its number.
 */
export function readUnit(
  atom: Atom,
  dimensions: readonly Dimension[],
  report: (finding: Finding) => void,
  gap = "",
): Unit | undefined {
  const span: Span = { line: 0, from: atom.from, to: atom.to };
  const found = findUnit(atom.text);
  if (found === undefined) {
    const [near] = dimensions.flatMap((dimension) => nearestUnits(atom.text, dimension));
    const fix =
      near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: gap + near }] };
    report(
      raise(
        unknownUnit,
        span,
        { written: atom.text, nearest: near ?? "", units: unitList(dimensions) },
        { fix },
      ),
    );
    return undefined;
  }
  const { unit, canonical } = found;
  if (!unit.dimensions.some((dimension) => dimensions.includes(dimension))) {
    const got = unit.dimensions.map(dimensionName).join(" or ");
    report(
      raise(wrongDimension, span, {
        written: atom.text,
        got,
        needed: needed(dimensions),
        units: unitList(dimensions),
      }),
    );
    return undefined;
  }
  if (!canonical) {
    const fix = { title: `Write ${unit.symbol}`, edits: [{ span, text: gap + unit.symbol }] };
    report(raise(unitSpelling, span, { written: atom.text, symbol: unit.symbol }, { fix }));
  }
  return unit;
}

/** The finding for a number, or a column, that stands without the unit it needs. */
export function noUnit(written: string, span: Span, dimensions: readonly Dimension[]): Finding {
  const units = unitList(dimensions);
  const needs = needed(dimensions);
  return raise(missingUnit, span, { written, dimension: needs, units });
}

function quotedNumber({ text, from, to }: Atom): Finding {
  const span: Span = { line: 0, from, to };
  const mended = "value" in readNumber(text) ? text : "";
  const fix = mended === "" ? undefined : { title: `Write ${mended}`, edits: [{ span, text: mended }] };
  return raise(numberForm, span, { written: `"${text}"`, problem: "not-a-number", mended }, { fix });
}

/** The finding for a word that is not meant as a number: what may stand there, and which of the words it is nearest to. */
export function noNumber(
  written: string,
  span: Span,
  dimensions: readonly Dimension[],
  others: readonly string[],
): Finding {
  const [near] = nearest(written, others);
  const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
  const needed = [...dimensions.map(dimensionName), ...others].join(" or ");
  return raise(numberForm, span, { written, problem: "not-a-number", mended: near ?? "", needed }, { fix });
}

function isUnitWord(atom: Atom, follows: (word: string) => boolean): boolean {
  if (atom.kind === "text" || follows(atom.text)) return false;
  return findUnit(atom.text) !== undefined || !/^[-+.]?\p{Nd}/u.test(atom.text);
}

function needed(dimensions: readonly Dimension[]): string {
  return dimensions.map(dimensionName).join(" or ");
}

function unitList(dimensions: readonly Dimension[]): string {
  return [...new Set(dimensions.flatMap((dimension) => unitsOf(dimension).map((unit) => unit.symbol)))].join(
    ", ",
  );
}
