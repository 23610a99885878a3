// What the uncertainty of one written number does to a result.

/** Steps as large as the uncertainty would see the curvature, much smaller ones only rounding. */
const STEP = 1 / 8;

/**
 * The contribution `|df/dx| u` of a number `x` of standard uncertainty `u` to that of `f(x)` (JCGM 100:2008, 5.1.3), by a
 * central difference, one-sided where `f` ends. 0 for a number without uncertainty.
 */
export function contribution(f: (x: number) => number | undefined, x: number, u: number): number {
  if (!(u > 0)) return 0;
  const h = u * STEP;
  const above = f(x + h);
  const below = f(x - h);
  if (above !== undefined && below !== undefined) return Math.abs(above - below) / (2 * STEP);
  const here = f(x);
  const side = above ?? below;
  return here === undefined || side === undefined ? 0 : Math.abs(side - here) / STEP;
}

/** Standard uncertainty of a written number from the size of its last digit (JCGM 100:2008, 4.3.7: a rectangle). */
export function digitUncertainty(step: number): number {
  return step / Math.sqrt(12);
}
