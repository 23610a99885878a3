// How a standard deviation that was estimated from few repeats is spread around the true one.
import { logGamma } from "./chi-square.ts";

/** Nodes of the integral over the logarithm of an estimated deviation: the trapezoid converges quickly there. */
const STEPS = 28;

export interface DeviationNode {
  /** Estimated over true deviation. */
  readonly ratio: number;
  readonly weight: number;
}

/**
 * Nodes and weights of a mean over what an estimate with `nu` degrees of freedom (4 and more) may be: nu times the square of
 * the ratio has the chi-square distribution. To 1e-4.
 */
export function estimatedDeviations(nu: number): readonly DeviationNode[] {
  // ln(s/sigma) has a standard deviation of about 1/sqrt(2 nu) and a longer tail below.
  const spread = 1 / Math.sqrt(2 * nu);
  const low = -9 * spread;
  const width = (5 * spread - low) / STEPS;
  const scale = (nu / 2) * Math.log(nu / 2) - logGamma(nu / 2);
  return Array.from({ length: STEPS + 1 }, (_, index) => {
    const log = low + index * width;
    const ratio = Math.exp(log);
    const density = 2 * Math.exp(scale + nu * log - (nu / 2) * ratio * ratio);
    return { ratio, weight: width * density };
  });
}
