// Many differences are looked at, each with its own limit: how often chance alone passes some of the limits.
import { logGamma } from "./chi-square.ts";
import { estimatedDeviations } from "./estimated-deviation.ts";
import { normalCdf } from "./normal.ts";

/**
 * Chance that of `count` independent differences without a cause `marked` or more lie beyond `limit` on either side, in units of
 * their standard uncertainty. Where that is estimated with `degreesOfFreedom` (4 and more) it is one estimate for all
 * of them, so that they are marked together more often than apart.
 *
 * Source: the binomial distribution, averaged over the chi distribution of the estimate; for one difference it is
 * Student's two-sided tail.
 */
export function chanceOfMarks(
  marked: number,
  count: number,
  limit: number,
  degreesOfFreedom?: number,
): number {
  const nodes =
    degreesOfFreedom === undefined ? [{ ratio: 1, weight: 1 }] : estimatedDeviations(degreesOfFreedom);
  return nodes.reduce(
    (sum, { ratio, weight }) => sum + weight * atLeast(marked, count, 2 * normalCdf(-limit * ratio)),
    0,
  );
}

/** The binomial chance of `marked` or more out of `count`, each of chance `each`: the terms of the thinner tail. */
function atLeast(marked: number, count: number, each: number): number {
  if (marked <= 0) return 1;
  const odds = each / (1 - each);
  if (marked > count * each) return tail(marked, count, each, (k) => ((count - k) / (k + 1)) * odds, 1);
  return 1 - tail(marked - 1, count, each, (k) => k / (count - k + 1) / odds, -1);
}

/** The terms from `first` on up or down, each from the one before by its ratio. */
function tail(first: number, count: number, each: number, ratio: (k: number) => number, by: 1 | -1): number {
  const ways = logGamma(count + 1) - logGamma(first + 1) - logGamma(count - first + 1);
  let term = Math.exp(ways + first * Math.log(each) + (count - first) * Math.log1p(-each));
  let sum = 0;
  for (let k = first; k >= 0 && k <= count && term > 1e-12 * sum; k += by) {
    sum += term;
    term *= ratio(k);
  }
  return sum;
}
