// Units that a reader asks for in place of those that the record uses, each for its dimension.

import { formatFixed } from "../quantity/digits.ts";
import type { Dimension } from "../quantity/dimension.ts";
import type { Quantity } from "../quantity/quantity.ts";
import { findUnit, fromSI, type Unit } from "../quantity/unit.ts";

export type WantedUnits = readonly Unit[];

const MOST_DECIMALS = 6;
/** A fraction of an inch is exact; nobody sets one closer than this, in m. */
const FRACTION_STEP = 2.5e-5;
/** A target of 28 inH2O is not meant to the nearest inch. */
const LEAST_DIGITS = 3;

/** The units of symbols; what is none is left out. */
export function unitsNamed(symbols: readonly string[]): WantedUnits {
  return symbols.flatMap((symbol) => findUnit(symbol)?.unit ?? []);
}

/** The unit that is asked for in a dimension; of several the last. */
export function wantedUnit(wanted: WantedUnits, dimension: Dimension): Unit | undefined {
  return wanted.findLast(({ dimensions }) => dimensions.includes(dimension));
}

/** A quantity with its unit: as it was written, or in the unit that is asked for in its dimension. */
export function quantityIn(quantity: Quantity, wanted: WantedUnits): string {
  const [dimension] = quantity.unit.dimensions;
  const unit = (dimension && wantedUnit(wanted, dimension)) ?? quantity.unit;
  return `${writtenIn(quantity, unit)} ${unit.symbol}`;
}

/** A written number in a unit: its own digits in its own unit, else enough to resolve what was written. */
export function writtenIn({ text, value, step, unit: own }: Quantity, unit: Unit): string {
  if (unit.symbol === own.symbol) return text;
  const shown = fromSI(value, unit);
  const resolved = (step > 0 ? step : FRACTION_STEP) / unit.factor;
  const before = shown === 0 ? LEAST_DIGITS : Math.floor(Math.log10(Math.abs(shown))) + 1;
  const decimals = Math.max(Math.ceil(-Math.log10(resolved) - 1e-9), LEAST_DIGITS - before);
  return formatFixed(shown, Math.min(MOST_DECIMALS, Math.max(0, decimals)));
}
