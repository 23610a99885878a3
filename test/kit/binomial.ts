// How well a rate is known from so many trials.
import jstat from "jstat";

export interface Rate {
  readonly hits: number;
  readonly trials: number;
  /** Two-sided confidence interval. */
  readonly low: number;
  readonly high: number;
}

/** The rate with its exact interval (C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413), by jstat's beta. */
export function rateOf(hits: number, trials: number, confidence = 0.95): Rate {
  const tail = (1 - confidence) / 2;
  return {
    hits,
    trials,
    low: hits === 0 ? 0 : jstat.beta.inv(tail, hits, trials - hits + 1),
    high: hits === trials ? 1 : jstat.beta.inv(1 - tail, hits + 1, trials - hits),
  };
}
