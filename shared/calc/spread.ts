// How far runs that should be alike, cylinders of one stage above all, stand from their own mean.
import type { RunResult, Station } from "../model/result.ts";
import { isQuotedAlike, isSameLift, spreadOf } from "./gain.ts";

/** Two-sided 95 % point of the normal distribution. */
const TWO_SIDED_95 = 1.96;

/** One run at one lift, against the mean of all of them there. */
export interface Deviation {
  readonly result: RunResult;
  readonly station: Station;
  /** Of corrected flow, relative to the mean. */
  readonly deviation: number;
  /** What a run that is like all others deviates by in 95 % of cases at most, relative. */
  readonly noise: number;
}

/**
 * The deviations at the lifts that all the runs have on their way up, by lift, then in the order of the runs. None where
 * there are fewer than two runs, or where they are not quoted alike or not from one bench.
 *
 * One of n means of r readings stands off the mean of all n with the variance s^2/r (1 - 1/n) (elementary; of repeatability
 * s only, because one bench is wrong by as much each time, and of alike numbers of readings; else the run's own).
 */
export function deviations(results: readonly RunResult[]): readonly Deviation[] {
  const [first, ...others] = results;
  if (first === undefined || others.length === 0) return [];
  const alike = others.every(
    ({ setup }) => isQuotedAlike(setup, first.setup) && setup.bench?.id === first.setup.bench?.id,
  );
  if (!alike) return [];
  return first.rising.flatMap(({ lift }) => {
    const stations = results.flatMap((result) => {
      const station = result.rising.find((other) => isSameLift(other.lift, lift));
      return station === undefined ? [] : { result, station };
    });
    const mean = stations.reduce((sum, { station }) => sum + station.flow, 0) / stations.length;
    if (stations.length < results.length || !(mean > 0)) return [];
    const share = Math.sqrt(1 - 1 / results.length);
    return stations.map(({ result, station }) => {
      const noise = TWO_SIDED_95 * spreadOf(result, station) * share;
      return { result, station, deviation: station.flow / mean - 1, noise };
    });
  });
}
