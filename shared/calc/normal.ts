// Chance is judged against the normal distribution; nothing in the language provides it.

import { polynomial } from "./polynomial.ts";

const inverseRootOfTwoPi = 0.3989422804014327;

/** Density of the standard normal distribution at `x`. */
export function normalPdf(x: number): number {
  return inverseRootOfTwoPi * Math.exp(-0.5 * x * x);
}

const tailNumerator = [
  0.0352624965998911, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
  221.213596169931, 220.206867912376,
];
const tailDenominator = [
  0.0883883476483184, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831,
  793.826512519948, 440.413735824752,
];

function upperTail(x: number): number {
  if (x > 38) return 0;
  const decay = Math.exp(-0.5 * x * x);
  if (x < 7.07106781186547) return (decay * polynomial(tailNumerator, x)) / polynomial(tailDenominator, x);
  const fraction = x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))));
  return (decay * inverseRootOfTwoPi) / fraction;
}

/**
 * Chance that a standard normal variable is at most `x`, to 1e-14 (in the lower tail to 1e-8 of the value and
 * better).
 * Source: G. West, Better approximations to cumulative normal functions, Wilmott Magazine, May 2005, after
 * J. F. Hart et al., Computer Approximations (1968), algorithm 5666.
 */
export function normalCdf(x: number): number {
  return x > 0 ? 1 - upperTail(x) : upperTail(-x);
}

const centralNumerator = [
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
  1971.5909503065513, 133.14166789178438, 3.3871328727963665,
];
const centralDenominator = [
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
  687.1870074920579, 42.31333070160091, 1,
];
const middleNumerator = [
  0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
  5.769497221460691, 4.630337846156546, 1.4234371107496835,
];
const middleDenominator = [
  1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
  1.6763848301838038, 2.053191626637759, 1,
];
const farNumerator = [
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
  0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
];
const farDenominator = [
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
  0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
];

/**
 * The `x` below which a standard normal variable lies with chance `p`, to about 1e-15 of its value; minus and
 * plus infinity at 0 and 1. `undefined` outside 0 to 1.
 * Source: M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477-484, routine PPND16.
 */
export function normalQuantile(p: number): number | undefined {
  if (!(p >= 0 && p <= 1)) return undefined;
  const fromMiddle = p - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle * fromMiddle;
    return (fromMiddle * polynomial(centralNumerator, r)) / polynomial(centralDenominator, r);
  }
  const tail = Math.min(p, 1 - p);
  if (tail === 0) return fromMiddle < 0 ? -Infinity : Infinity;
  const r = Math.sqrt(-Math.log(tail));
  const size =
    r <= 5
      ? polynomial(middleNumerator, r - 1.6) / polynomial(middleDenominator, r - 1.6)
      : polynomial(farNumerator, r - 5) / polynomial(farDenominator, r - 5);
  return fromMiddle < 0 ? -size : size;
}
