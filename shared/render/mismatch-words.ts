// The conditions in which two runs differ, in words.
import type { Condition, Mismatch } from "../calc/comparable.ts";

const NAMES: Readonly<Record<Condition, string>> = {
  side: "side",
  direction: "direction",
  target: "target",
  quote: "quoted depression",
  reference: "reference air",
  adapter: "adapter",
  entry: "entry",
  stub: "stub",
  valve: "valve",
};

/** `target (20 inH2O, there 28 inH2O), entry (clay, there bare)`. */
export function mismatchWords(mismatches: readonly Mismatch[]): string {
  return mismatches.map(({ what, own, theirs }) => `${NAMES[what]} (${own}, there ${theirs})`).join(", ");
}
