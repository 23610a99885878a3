// Whether two measurements of one thing agree within what both say of themselves.

/**
 * The normalised difference of two values with expanded uncertainties (k = 2), all in one unit: the two agree where it lies
 * from -1 to 1. `undefined` where neither has an uncertainty.
 * Source: ISO 13528, the E_n number; NIST/SEMATECH Dataplot reference manual, "En".
 */
export function enNumber(
  value: number,
  uncertainty: number,
  reference: number,
  referenceUncertainty: number,
): number | undefined {
  const both = Math.hypot(uncertainty, referenceUncertainty);
  return both > 0 ? (value - reference) / both : undefined;
}
