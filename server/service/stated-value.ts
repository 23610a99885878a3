// Reads a value with its unit where people write one outside a record: in settings and behind options.
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { readNumber, splitNumberUnit } from "../../shared/quantity/number.ts";
import { findUnit, toSI } from "../../shared/quantity/unit.ts";

/** In SI; `undefined` for what is no number with a unit of the dimension, with or without a blank between them. */
export function statedValue(text: string, dimension: Dimension): number | undefined {
  const [first = "", second] = text.trim().split(/\s+/);
  const split = second === undefined ? splitNumberUnit(first) : { number: first, unit: second };
  const number = split && readNumber(split.number);
  const found = split && findUnit(split.unit);
  if (number === undefined || "problem" in number || !found?.unit.dimensions.includes(dimension))
    return undefined;
  return toSI(number.value, found.unit);
}
