// How well a standard deviation is known from repeats, the chi-square distribution says.

import { risingRoot } from "./rising-root.ts";

/** ln Gamma(x) for x > 0: Stirling's series (NIST DLMF 5.11.1), reached from a small x through Gamma(x + 1) = x Gamma(x). */
export function logGamma(x: number): number {
  let shift = 0;
  let y = x;
  for (; y < 15; y += 1) shift += Math.log(y);
  const series = 1 / (12 * y) - 1 / (360 * y ** 3) + 1 / (1260 * y ** 5) - 1 / (1680 * y ** 7);
  return (y - 0.5) * Math.log(y) - y + 0.5 * Math.log(2 * Math.PI) + series - shift;
}

/** Normalised incomplete gamma function P(a, x): its series (DLMF 8.11.4) below a + 1. */
function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 100_000 && term > sum * 1e-17; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** Q(a, x) = 1 - P(a, x): the continued fraction (DLMF 8.9.2) from a + 1 on, by Lentz's method. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Number.MAX_VALUE;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < 100_000; n += 1) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return fraction * Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** Chance that chi-square with `nu` > 0 degrees of freedom is at most `x` (Abramowitz and Stegun 26.4.19). */
export function chiSquareCdf(x: number, nu: number): number {
  if (!(x > 0)) return 0;
  const a = nu / 2;
  return x / 2 < a + 1 ? lowerSeries(a, x / 2) : 1 - upperFraction(a, x / 2);
}

/** Most degrees of freedom that a quantile is asked for: more repeats than any shop takes. */
const MOST_DEGREES = 100_000;

/**
 * The value that chi-square with `nu` degrees of freedom (1 to 100 000) does not exceed with chance `p` (0.0001 to
 * 0.9999). Relative accuracy 1e-9. `undefined` outside these ranges.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.19, inverted numerically; DLMF 8.9.2, 8.11.4.
 */
export function chiSquareQuantile(p: number, nu: number): number | undefined {
  if (!(p >= 1e-4 && p <= 0.9999 && nu >= 1 && nu <= MOST_DEGREES)) return undefined;
  let high = nu + 10;
  while (chiSquareCdf(high, nu) < p) high *= 2;
  const low = 1e-10;
  return risingRoot((x) => chiSquareCdf(x, nu) - p, low, high, 1e-12);
}

/** A standard deviation and what it may truly be, with 95 % confidence. */
export interface DeviationInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * Two-sided 95 % confidence interval of a standard deviation estimated with `nu` degrees of freedom:
 * `s sqrt(nu / chi2(0.975))` to `s sqrt(nu / chi2(0.025))` (ISO 2854, table G; NIST/SEMATECH e-Handbook 1.3.5.8).
 */
export function deviationInterval(deviation: number, nu: number): DeviationInterval | undefined {
  const upper = chiSquareQuantile(0.975, nu);
  const lower = chiSquareQuantile(0.025, nu);
  if (upper === undefined || lower === undefined) return undefined;
  return { low: deviation * Math.sqrt(nu / upper), high: deviation * Math.sqrt(nu / lower) };
}
