// What one run gains over another, lift by lift, and how much of it the bench could have made up.
import type { RunResult, Station } from "../model/result.ts";
import { isReadAlike } from "./comparable.ts";
import { widening } from "./repeatability.ts";

/** A tenth of a micrometre: closer than any dial reads, wider than inches and millimetres round apart, m. */
const SAME_LIFT = 1e-7;
/** Two-sided 95 % point of the normal distribution. */
export const TWO_SIDED_95 = 1.96;

/** The gain at one lift and direction. */
export interface Gain {
  readonly station: Station;
  readonly baseline: Station;
  /** Of corrected flow, relative to the baseline. */
  readonly gain: number;
  /** What two readings of the same port differ by in 95 % of cases at most, relative. */
  readonly noise: number;
}

/**
 * The gains of the stations that both runs have, rising ones before falling ones, by lift. There is none where the two
 * were not read alike.
 */
export function gains(result: RunResult, baseline: RunResult): readonly Gain[] {
  if (!isReadAlike(result.setup, baseline.setup)) return [];
  return [...result.rising, ...result.falling].flatMap((station) => gainAt(station, result, baseline) ?? []);
}

/**
 * The gain of one station of `result`. Its noise is 1.96 standard uncertainties of the difference of two means that share
 * a bench: repeatability only, widened where that itself is pooled; between two benches the uncertainties of their flow
 * scales join in (JCGM 100:2008, 5.1.2).
 */
export function gainAt(station: Station, result: RunResult, baseline: RunResult): Gain | undefined {
  if (!isReadAlike(result.setup, baseline.setup)) return undefined;
  const branch = result.falling.includes(station) ? baseline.falling : baseline.rising;
  const theirs = branch.find((other) => isSameLift(other.lift, station.lift));
  if (theirs === undefined || !(theirs.flow > 0)) return undefined;
  const noise =
    TWO_SIDED_95 *
    Math.hypot(spreadOf(result, station), spreadOf(baseline, theirs), scaleUncertainty(result, baseline));
  return { station, baseline: theirs, gain: station.flow / theirs.flow - 1, noise };
}

/** Whether a gain could have come about by chance alone. */
export function isWithinNoise({ gain, noise }: Pick<Gain, "gain" | "noise">): boolean {
  return Math.abs(gain) <= noise;
}

/** Whether two lifts, in m, are one station. */
export function isSameLift(a: number, b: number | undefined): boolean {
  return b !== undefined && Math.abs(a - b) <= SAME_LIFT;
}

/** Standard deviation of a station's mean, relative; wider where the bench's repeatability is itself but estimated. */
export function spreadOf({ repeatability }: RunResult, { rows }: Station): number {
  return (repeatability.deviation * widening(repeatability)) / Math.sqrt(rows.length);
}

/** Standard uncertainty of the two flow scales, relative: one bench is wrong by as much both times. */
export function scaleUncertainty(
  { setup: { bench: own } }: RunResult,
  { setup: { bench: theirs } }: RunResult,
): number {
  if (own?.id === theirs?.id) return 0;
  return Math.hypot(own?.uncertainty?.value ?? 0, theirs?.uncertainty?.value ?? 0) / 2;
}
