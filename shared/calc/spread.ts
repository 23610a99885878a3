// How far runs that should be alike, cylinders of one stage above all, stand from their own mean.
import type { RunResult, Station } from "../model/result.ts";
import { isReadAlike } from "./comparable.ts";
import { isSameLift, spreadOf } from "./gain.ts";
import { rangeQuantile } from "./range-of-normals.ts";

/** One run at one lift, against the mean of all of them there. */
export interface Deviation {
  readonly result: RunResult;
  readonly station: Station;
  /** Of corrected flow, relative to the mean. */
  readonly deviation: number;
  /** Half of what the two furthest of as many equal runs differ by in 95 % of cases at most, relative. */
  readonly noise: number;
}

/**
 * The deviations at the lifts that all the runs have on their way up, by lift, then in the order of the runs. None where
 * there are fewer than two runs, or where they are not quoted alike or not from one bench.
 *
 * The two furthest of n means of r readings differ by the range of n normal values times s/sqrt(r) at most (H. O. Hartley,
 * Biometrika 32 (1942) 334-348; of repeatability s only, because one bench is wrong by as much each time; each run with
 * its own number of readings): two runs that stand beyond a band of that height on its either side are not alike.
 */
export function deviations(results: readonly RunResult[]): readonly Deviation[] {
  const [first, ...others] = results;
  if (first === undefined || others.length === 0) return [];
  const alike = others.every(
    ({ setup }) => isReadAlike(setup, first.setup) && setup.bench?.id === first.setup.bench?.id,
  );
  if (!alike) return [];
  return first.rising.flatMap(({ lift }) => {
    const stations = results.flatMap((result) => {
      const station = result.rising.find((other) => isSameLift(other.lift, lift));
      return station === undefined ? [] : { result, station };
    });
    const mean = stations.reduce((sum, { station }) => sum + station.flow, 0) / stations.length;
    if (stations.length < results.length || !(mean > 0)) return [];
    const range = rangeQuantile(results.length);
    if (range === undefined) return [];
    return stations.map(({ result, station }) => {
      const noise = (range / 2) * spreadOf(result, station);
      return { result, station, deviation: station.flow / mean - 1, noise };
    });
  });
}
