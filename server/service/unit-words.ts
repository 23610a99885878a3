// What there is to say about a unit: what it measures, its factor, and who says so.
import { dimensionName } from "../../shared/quantity/dimension.ts";
import type { Unit } from "../../shared/quantity/unit.ts";

/** What a unit measures, in words. */
export function measureWords({ dimensions }: Unit): string {
  return dimensions.map(dimensionName).join(" or ");
}

/** Markdown for a unit. */
export function unitText(unit: Unit): string {
  const zero = unit.offset === 0 ? "" : ` (from ${unit.offset} below its zero)`;
  return `**${unit.symbol}** — ${measureWords(unit)}; 1 ${unit.symbol} = ${unit.factor} ${unit.si}${zero}\n\n${unit.source}`;
}
