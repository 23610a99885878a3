// A value as a record states it: the number for calculating, the digits as they were written for showing.

import { toSI, type Unit } from "./unit.ts";

/** A written number with its unit. */
export interface Quantity {
  /** In the SI unit `unit.si`. */
  readonly value: number;
  /** The unit it was written in. */
  readonly unit: Unit;
  /** The digits as written: `0.400` stays `0.400`. */
  readonly text: string;
  /** Size of one step of the last written digit, in `unit.si`; 0 for a fraction, which is exact. */
  readonly step: number;
}

/**
 * A quantity from a number in its unit: `text` as written, `value` and `step` as `readNumber` gives them. The step is a
 * difference and takes no part in a temperature scale's offset.
 */
export function quantity(text: string, value: number, step: number, unit: Unit): Quantity {
  return { value: toSI(value, unit), unit, text, step: step * unit.factor };
}
