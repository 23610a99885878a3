// Shows a result with the digits that its uncertainty deserves.
import { decimalsFor, formatFixed } from "../quantity/digits.ts";

/** Decimals of bare numbers: coefficients and L/D, which nobody reads closer. */
const RATIO_DECIMALS = 3;
/** Digits of a value whose uncertainty is not known. */
const PLAIN_DIGITS = 4;
const MOST_DECIMALS = 6;

/** A value in its display unit, whose expanded uncertainty is `relative` times it. */
export function shownNumber(value: number, relative: number | undefined): string {
  return formatFixed(value, shownDecimals(value, relative));
}

/** The decimals of that value, for others that are to be shown beside it. */
export function shownDecimals(value: number, relative: number | undefined): number {
  return decimalsFor(Math.abs(value) * (relative ?? 0)) ?? plainDecimals(value);
}

/** An expanded uncertainty in its display unit. */
export function shownUncertainty(value: number): string {
  return shownNumber(value, 1);
}

/** A number without a unit. */
export function shownRatio(value: number): string {
  return formatFixed(value, RATIO_DECIMALS);
}

function plainDecimals(value: number): number {
  const before = value === 0 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1;
  return Math.min(MOST_DECIMALS, Math.max(0, PLAIN_DIGITS - before));
}
