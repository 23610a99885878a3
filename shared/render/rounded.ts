// Takes the noise of binary fractions off numbers that machines will read.

/** Digits that survive conversion to a unit and back. */
const DIGITS = 12;

/** The number to 12 significant digits. */
export function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
