// Looks units up as people write them, and takes values to SI and back.

import type { Dimension } from "./dimension.ts";
import { nearest } from "./nearest.ts";
import { UNITS } from "./units.ts";

/** One unit that a record may use. */
export interface Unit {
  /** The canonical ASCII spelling. */
  readonly symbol: string;
  /**
   * Other spellings that are read, beyond those that `foldUnit` makes equal (letter case, `°`, raised and lowered
   * digits, `″`, the dot of a product).
   */
  readonly names: readonly string[];
  /** What the unit measures; more than one only where the trade uses one symbol for two things (`Hz`). */
  readonly dimensions: readonly Dimension[];
  /**
   * The SI unit a value is held in. Two units convert into each other only if this is the same: that keeps a signal in
   * mA or Hz away from a table in V, though all three are signals.
   */
  readonly si: string;
  /** SI value = (written value + `offset`) · `factor`. */
  readonly factor: number;
  /** In the unit itself; 0 but for the temperature scales whose zero is not the absolute one. */
  readonly offset: number;
  /** Where the factor comes from. */
  readonly source: string;
}

/** A unit that was found, and whether it was written as its canonical symbol. */
export interface FoundUnit {
  readonly unit: Unit;
  readonly canonical: boolean;
}

/**
 * What spellings of one unit have in common: lower case, `deg` for a degree sign, plain digits for raised and lowered
 * ones, `"` for any inch mark, `.` for any sign of a product, no `^`. No two rows of the table may share a folded
 * spelling.
 */
export function foldUnit(text: string): string {
  return text
    .replace(/[“”″]/g, '"')
    .replace(/[’′]/g, "'")
    .replace(/[º˚]/g, "°")
    .normalize("NFKC")
    .replaceAll("°", "deg")
    .replace(/[·⋅∙*-]/g, ".")
    .replaceAll("^", "")
    .toLowerCase();
}

const BY_SYMBOL: ReadonlyMap<string, FoundUnit> = new Map(
  UNITS.map((unit) => [unit.symbol, { unit, canonical: true }]),
);

/** Made when the first spelling is looked for: records mostly write the symbols themselves. */
let folded: ReadonlyMap<string, Unit> | undefined;

/** The units by their folded spellings. */
function byFolded(): ReadonlyMap<string, Unit> {
  folded ??= new Map(
    UNITS.flatMap((unit) => [unit.symbol, ...unit.names].map((name) => [foldUnit(name), unit] as const)),
  );
  return folded;
}

const LONGEST_SPELLING = 32;

/**
 * The unit that a word stands for: its exact symbol, else one of its other spellings in any letter case.
 * `undefined` for what is no unit of the table; of two units, never one at a guess.
 */
export function findUnit(text: string): FoundUnit | undefined {
  const exact = BY_SYMBOL.get(text);
  if (exact !== undefined || text.length > LONGEST_SPELLING) return exact;
  const unit = byFolded().get(foldUnit(text));
  return unit && { unit, canonical: false };
}

/**
 * Symbols of the units whose spellings are within two mistakes of a word (fewer for short words), best first, each once;
 * only those of one dimension if it is given. Empty if nothing is near.
 */
export function nearestUnits(text: string, dimension?: Dimension): readonly string[] {
  if (text.length > LONGEST_SPELLING) return [];
  const symbolOf = new Map<string, string>();
  for (const [spelling, unit] of byFolded()) {
    if (dimension === undefined || unit.dimensions.includes(dimension)) symbolOf.set(spelling, unit.symbol);
  }
  const spellings = nearest(foldUnit(text), [...symbolOf.keys()]);
  return [...new Set(spellings.map((spelling) => symbolOf.get(spelling) ?? spelling))];
}

/** The units of one dimension in the order of the table: the usual ones of a bench first. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return UNITS.filter((unit) => unit.dimensions.includes(dimension));
}

/**
 * Whether a value in one unit can be given in the other. Units of one dimension can, but for signals: a current or a
 * frequency is no voltage.
 */
export function convertible(a: Unit, b: Unit): boolean {
  return a.si === b.si && a.dimensions.some((dimension) => b.dimensions.includes(dimension));
}

/**
 * A written value in the SI unit `unit.si` (revolutions per second for a rotational speed). A temperature is a reading on
 * its scale, not a difference: K = (degF + 459.67)/1.8 (NIST SP 811 (2008), B.8).
 */
export function toSI(value: number, unit: Unit): number {
  return (value + unit.offset) * unit.factor;
}

/** The inverse of `toSI`: an SI value as it would be written in the unit. */
export function fromSI(value: number, unit: Unit): number {
  return value / unit.factor - unit.offset;
}
