// What the uncertainty of one written number does to a result.

/** Steps as large as the uncertainty would see the curvature, much smaller ones only rounding. */
const STEP = 1 / 8;

/** How far a number of standard uncertainty `u` is moved either way. */
export function stepFor(u: number): number {
  return u * STEP;
}

/**
 * The contribution `|df/dx| u` of a number of standard uncertainty `u` to that of a result `f` (JCGM 100:2008, 5.1.3),
 * from `f` at the number itself and at `stepFor(u)` above and below it: a central difference, one-sided where `f` ends,
 * which is said by NaN.
 */
export function contribution(above: number, here: number, below: number): number {
  const central = Math.abs(above - below) / (2 * STEP);
  if (!Number.isNaN(central)) return central;
  const oneSided = Math.abs((Number.isNaN(above) ? below : above) - here) / STEP;
  return Number.isNaN(oneSided) ? 0 : oneSided;
}

/** Standard uncertainty of a written number from the size of its last digit (JCGM 100:2008, 4.3.7: a rectangle). */
export function digitUncertainty(step: number): number {
  return step / Math.sqrt(12);
}
