// What one run gains over another as a whole: one number for two curves.
import type { RunResult } from "../model/result.ts";
import { type Gain, gains, scaleUncertainty, spreadOf, TWO_SIDED_95 } from "./gain.ts";

/** The gain of the mean flow over lift. */
export interface MeanGain {
  /** Relative to the baseline's mean. */
  readonly gain: number;
  /** What the means of two runs of the same port differ by in 95 % of cases at most, relative. */
  readonly noise: number;
  /** How many lifts both runs have. */
  readonly lifts: number;
}

/**
 * Gain of the mean over lift, of straight lines between the rising stations that both runs have; with one such station
 * the gain there, and none without. Its noise is 1.96 standard uncertainties of the ratio of two weighted means: readings
 * at different lifts err independently, a flow scale errs at all of them alike (JCGM 100:2008, 5.1.2 and 5.2.2).
 */
export function meanGain(result: RunResult, baseline: RunResult): MeanGain | undefined {
  const shared = gains(result, baseline).filter(({ station }) => result.rising.includes(station));
  if (shared.length === 0) return undefined;
  const weights = weightsOf(shared);
  const own = weighted(shared.map(({ station }) => station.flow * spreadOf(result, station)));
  const theirs = weighted(shared.map(({ baseline: other }) => other.flow * spreadOf(baseline, other)));
  const mean = weighted(shared.map(({ station }) => station.flow));
  const before = weighted(shared.map(({ baseline: other }) => other.flow));
  if (!(before.sum > 0 && mean.sum > 0)) return undefined;
  const noise = Math.hypot(
    own.length / mean.sum,
    theirs.length / before.sum,
    scaleUncertainty(result, baseline),
  );
  return { gain: mean.sum / before.sum - 1, noise: TWO_SIDED_95 * noise, lifts: shared.length };

  function weighted(values: readonly number[]): { readonly sum: number; readonly length: number } {
    const parts = values.map((value, index) => value * (weights[index] ?? 0));
    return { sum: parts.reduce((sum, part) => sum + part, 0), length: Math.hypot(...parts) };
  }
}

/** The trapezoid rule as weights: half of the lift to each neighbour. */
function weightsOf(shared: readonly Gain[]): readonly number[] {
  if (shared.length === 1) return [1];
  const lifts = shared.map(({ station }) => station.lift);
  return lifts.map((lift, index) => ((lifts[index + 1] ?? lift) - (lifts[index - 1] ?? lift)) / 2);
}
