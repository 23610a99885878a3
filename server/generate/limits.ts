// The limits that a workspace can set, as headnote.json writes them, for the schema and the reference.
import { DEFAULT_LIMITS } from "../../shared/model/limits.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { findUnit, fromSI } from "../../shared/quantity/unit.ts";

/** One limit: its key in headnote.json, what holds without it, as that file would say it, and what it is for. */
export interface LimitEntry {
  readonly key: string;
  readonly standard: string | number;
  readonly doc: string;
}

export const LIMIT_ENTRIES: readonly LimitEntry[] = [
  {
    key: "leak-hint",
    standard: inUnit(DEFAULT_LIMITS.leakHint, "%", 0),
    doc: "A leak above this share of a reading is a hint (`large-leak`).",
  },
  {
    key: "leak-warning",
    standard: inUnit(DEFAULT_LIMITS.leakWarning, "%", 0),
    doc: "A leak above this share of a reading is a warning (`large-leak`).",
  },
  {
    key: "adapter",
    standard: inUnit(DEFAULT_LIMITS.adapter, "%", 0),
    doc: "How far the adapter may be off the engine's bore (`adapter-off-bore`).",
  },
  {
    key: "cd-lowest",
    standard: DEFAULT_LIMITS.cdLowest,
    doc: "The lowest Cd on the curtain area that is believed below L/D 0.3 (`implausible-cd`).",
  },
  {
    key: "cd-highest",
    standard: DEFAULT_LIMITS.cdHighest,
    doc: "The highest Cd on the curtain area that is believed below L/D 0.3 (`implausible-cd`).",
  },
  {
    key: "barometer",
    standard: inUnit(DEFAULT_LIMITS.barometer, "inHg", 1),
    doc: "How far a barometer may stand above the standard atmosphere of its elevation (`altimeter-as-station`).",
  },
  {
    key: "cylinders",
    standard: inUnit(DEFAULT_LIMITS.cylinders, "%", 0),
    doc: "How far apart the cylinders of one stage may be (`cylinders-apart`).",
  },
  {
    key: "scaling",
    standard: DEFAULT_LIMITS.scaling,
    doc: "The largest ratio, either way, of the quoted depression to the one of a row (`scaled-too-far`).",
  },
];

/** An SI value as a record would write it. */
function inUnit(value: number, symbol: string, decimals: number): string {
  const found = findUnit(symbol);
  if (found === undefined) throw new RangeError(`${symbol} is in the table of units`);
  return `${formatFixed(fromSI(value, found.unit), decimals)} ${symbol}`;
}
