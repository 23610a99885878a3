// Scatter known from a few repeats only is worth less: how much less, Student's distribution says.

import { normalQuantile } from "./normal.ts";
import { risingRoot } from "./rising-root.ts";

/** From here on the expansion about the normal quantile is exact to the last digits. */
const manyDegrees = 10_000;

/**
 * Gamma(x + 1/2) / Gamma(x) for x > 0: the asymptotic series (NIST DLMF 5.11.13), reached from a small x through
 * Gamma(x + 1) = x Gamma(x).
 */
function halfStepOfGamma(x: number): number {
  let factor = 1;
  let y = x;
  for (; y < 20; y += 1) factor *= y / (y + 0.5);
  const series = -1 / (8 * y) + 1 / (192 * y ** 3) - 1 / (640 * y ** 5) + 17 / (14336 * y ** 7);
  return factor * Math.sqrt(y) * Math.exp(series);
}

/** Continued fraction of the incomplete beta function (NIST DLMF 8.17.22), evaluated by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < 10_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    fraction *= c * d;
    const odd = -((a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return fraction;
}

/**
 * Chance that Student's t with `nu` degrees of freedom, above 0, exceeds `t` > 0.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5.27.
 */
export function studentTail(t: number, nu: number): number {
  const a = nu / 2;
  const x = nu / (nu + t * t);
  const y = (t * t) / (nu + t * t);
  const front = Math.exp(-a * Math.log1p((t * t) / nu)) * Math.sqrt(y / Math.PI) * halfStepOfGamma(a);
  return x < (a + 1) / (a + 2.5)
    ? (front * betaFraction(x, a, 0.5)) / nu
    : 0.5 - front * betaFraction(y, 0.5, a);
}

function expandAboutNormal(z: number, nu: number): number {
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + first / nu + second / nu ** 2 + third / nu ** 3;
}

/**
 * Quantile of Student's t distribution: the value not exceeded with chance `p` (between 0 and 1) at `nu` degrees
 * of freedom (any real number from 1 up, infinite for the normal distribution). Relative accuracy 1e-10.
 * `undefined` outside these ranges.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5.27 inverted numerically,
 * 26.7.5 from 10 000 degrees of freedom.
 */
export function studentQuantile(p: number, nu: number): number | undefined {
  if (!(p > 0 && p < 1 && nu >= 1)) return undefined;
  const tail = Math.min(p, 1 - p);
  const z = normalQuantile(tail);
  if (z === undefined || tail === 0.5) return z;
  const sign = p < 0.5 ? -1 : 1;
  if (nu >= manyDegrees) return sign * expandAboutNormal(-z, nu);
  // The quantile lies between that of the normal distribution and that of one degree of freedom.
  const cauchy = 1 / Math.tan(Math.PI * tail);
  const excess = (t: number) => Math.log(tail) - Math.log(studentTail(t, nu));
  return sign * risingRoot(excess, -z, cauchy, 1e-13);
}
