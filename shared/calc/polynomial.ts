// Rational approximations are given as lists of coefficients; this is how such a list is read.

/** Value at `x` of the polynomial whose coefficients are listed from the highest power down (Horner's rule). */
export function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}
