// Prints numbers the same on every machine, with no more digits than their uncertainty deserves.

const MOST_DECIMALS = 6;

/** What stands in the place of a number that does not exist. */
const NOTHING = "-";

/**
 * Decimals with which a value of this expanded uncertainty is shown: the uncertainty itself keeps two significant digits
 * (JCGM 100:2008 (GUM), 7.2.6), at least 0 and at most 6 decimals. `undefined` unless the uncertainty is positive and
 * finite.
 */
export function decimalsFor(uncertainty: number): number | undefined {
  if (!(uncertainty > 0 && uncertainty < Number.POSITIVE_INFINITY)) return undefined;
  // Rounded to two digits first: 0.0996 becomes 0.10 and needs two decimals, not three.
  const exponent = Number(uncertainty.toExponential(1).slice(4));
  return Math.min(MOST_DECIMALS, Math.max(0, 1 - exponent));
}

/**
 * A value with a fixed number of decimals (a whole number from 0 to 100), without exponent, without a sign on zero; `-`
 * for one that is not finite.
 */
export function formatFixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NOTHING;
  const text = Math.abs(value) < 1e21 ? value.toFixed(decimals) : wholeDigits(value, decimals);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** From 1e21 on every double is whole, and `toFixed` would write an exponent. */
function wholeDigits(value: number, decimals: number): string {
  return decimals > 0 ? `${BigInt(value)}.${"0".repeat(decimals)}` : `${BigInt(value)}`;
}
