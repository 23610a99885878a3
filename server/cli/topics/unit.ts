// Explains a unit: what it measures, what it is in SI and on whose word.
import { dimensionName } from "../../../shared/quantity/dimension.ts";
import { findUnit } from "../../../shared/quantity/unit.ts";
import { UNITS } from "../../../shared/quantity/units.ts";
import type { Topic } from "./topic.ts";

/** Takes off what binary arithmetic adds to a factor. */
const FIGURES = 12;

export const unitTopic: Topic = {
  title: "units",
  words: UNITS.map(({ symbol }) => symbol),
  explain: (word) => {
    const unit = findUnit(word)?.unit;
    if (unit === undefined) return undefined;
    const { symbol, names, dimensions, si, factor, offset, source } = unit;
    const written = offset === 0 ? symbol : `(${symbol} + ${plain(offset)})`;
    return [
      `${symbol} (unit of ${dimensions.map(dimensionName).join(" or ")})`,
      `SI: ${si} = ${written} × ${plain(factor)}`,
      `Source: ${source}`,
      ...(names.length === 0 ? [] : [`Also read, with a fix to ${symbol}: ${names.join("  ")}`]),
      "",
    ].join("\n");
  },
};

function plain(value: number): string {
  return String(Number(value.toPrecision(FIGURES)));
}
