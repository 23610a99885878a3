// Which units of a dimension a file writes, so that it is offered its own first.
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { type Unit, unitsOf } from "../../shared/quantity/unit.ts";

/** Enough of a file to see which units it writes. */
const MOST_SEARCHED = 20_000;

export interface UsedUnit {
  readonly unit: Unit;
  /** How often the file writes it. */
  readonly used: number;
}

/** Ranks the units of some dimensions for one text: those that it writes most first, then in the order of the table. */
export function usedUnits(text: string): (dimensions: readonly Dimension[]) => readonly UsedUnit[] {
  const counts = new Map<string, number>();
  for (const word of text.slice(0, MOST_SEARCHED).match(/[^\s[\]]+/g) ?? []) {
    counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  return (dimensions) =>
    [...new Set(dimensions.flatMap(unitsOf))]
      .map((unit) => ({ unit, used: isNumeral(unit) ? 0 : (counts.get(unit.symbol) ?? 0) }))
      .sort((a, b) => b.used - a.used);
}

/** The unit of what has none is written as a number is, and what a file writes so is nearly always one. */
function isNumeral({ symbol }: Unit): boolean {
  return symbol === "1";
}
