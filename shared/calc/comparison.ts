// One run laid over another: lift by lift where both have been, and in the mean over the lifts that they share.
import type { Branch, RunResult, Station } from "../model/result.ts";
import { type Mismatch, mismatches } from "./comparable.ts";
import { bendAt, type CurveAt, curveAt } from "./curve-at.ts";
import { isSameLift, scaleUncertainty } from "./gain.ts";
import { widening } from "./repeatability.ts";
import { sameReadings } from "./same-readings.ts";
import { meanOver } from "./summary.ts";

const ROUNDING = 1e-9;
/** Two-sided 95 % point of the normal distribution. */
const TWO_SIDED_95 = 1.96;

/** A gain over the baseline and what chance alone could have made of it, relative to the baseline. */
export interface Gained {
  readonly gain: number;
  /** What two measurements of the same port differ by in 95 % of cases at most. */
  readonly noise: number;
  readonly isResolved: boolean;
}

/** One lift of either run. */
export interface ComparedLift {
  readonly lift: number;
  readonly branch: Branch;
  /** Missing where a run has not been; between two of its stations it is on the line between them. */
  readonly baseline: CurveAt | undefined;
  readonly own: CurveAt | undefined;
  readonly gained: Gained | undefined;
}

/** Means over a stretch of lift, m and m3/s. */
export interface ComparedMean extends Gained {
  readonly from: number;
  readonly to: number;
  readonly baseline: number;
  readonly own: number;
}

export interface Comparison {
  /** What stands in the way of comparing; where there is anything, the gains are not those of the port alone. */
  readonly mismatches: readonly Mismatch[];
  /** Rising lifts before falling ones, by lift; falling ones where both runs have been down again. */
  readonly lifts: readonly ComparedLift[];
  /** Over the lifts that both runs cover on the way up; missing where they share no stretch. */
  readonly mean: ComparedMean | undefined;
  /** The same over the thirds of that stretch. */
  readonly bands: readonly ComparedMean[];
  /** How many readings of the run are the baseline's own: of two states of one run. Chance has no part in these. */
  readonly sameReadings: number;
}

/**
 * A run over its baseline. Lifts that only one has read are on the straight line between the other's stations, and have
 * no gain beyond them. Noise is 1.96 standard uncertainties of the difference: repeatability on one bench, and the two
 * flow scales with it between two (JCGM 100:2008, 5.1.2). Stations that stand on the very same readings have none: what
 * is common to both cancels (5.2.2).
 */
export function compareRuns(own: RunResult, baseline: RunResult): Comparison {
  const same = sameReadings(own, baseline);
  const shared = sharedStretch(own.rising, baseline.rising);
  const third = shared === undefined ? 0 : (shared.to - shared.from) / 3;
  const parts = shared === undefined ? [] : [0, 1, 2].map((part) => shared.from + part * third);
  return {
    mismatches: mismatches(own.setup, baseline.setup),
    lifts: [
      ...comparedLifts(own, baseline, "rising", same),
      ...(own.falling.length > 0 && baseline.falling.length > 0
        ? comparedLifts(own, baseline, "falling", same)
        : []),
    ],
    mean: shared && comparedMean(own, baseline, same, shared.from, shared.to),
    bands: parts.flatMap((from, part) => {
      const to = parts[part + 1] ?? shared?.to ?? from;
      return comparedMean(own, baseline, same, from, to) ?? [];
    }),
    sameReadings: [...own.rising, ...own.falling].reduce(
      (count, station) => count + (same.has(station) ? station.rows.length : 0),
      0,
    ),
  };
}

function comparedLifts(
  own: RunResult,
  baseline: RunResult,
  branch: Branch,
  same: ReadonlySet<Station>,
): readonly ComparedLift[] {
  const scale = scaleUncertainty(own, baseline);
  return liftsOf(own[branch], baseline[branch]).map((lift) => {
    const ours = at(own, branch, lift);
    const theirs = at(baseline, branch, lift);
    return { lift, branch, own: ours, baseline: theirs, gained: gainedAt(ours, theirs, scale, same) };
  });
}

function at(result: RunResult, branch: Branch, lift: number): CurveAt | undefined {
  return curveAt(result[branch], lift, result.repeatability);
}

function gainedAt(
  own: CurveAt | undefined,
  baseline: CurveAt | undefined,
  scale: number,
  same: ReadonlySet<Station>,
) {
  if (own === undefined || baseline === undefined || !(baseline.flow > 0)) return undefined;
  const isOne = own.parts.every(({ station }) => same.has(station)) && own.isRead && baseline.isRead;
  const spread = isOne ? 0 : Math.hypot(own.spread, baseline.spread, scale);
  return gained(own.flow / baseline.flow - 1, spread);
}

function gained(gain: number, uncertainty: number): Gained {
  const noise = TWO_SIDED_95 * uncertainty;
  return { gain, noise, isResolved: Math.abs(gain) > noise + ROUNDING };
}

/** The lifts of both, each once, rising. */
function liftsOf(own: readonly Station[], baseline: readonly Station[]): readonly number[] {
  const all = [...own, ...baseline].map(({ lift }) => lift).sort((a, b) => a - b);
  return all.filter((lift, index) => !isSameLift(lift, all[index - 1]));
}

function sharedStretch(own: readonly Station[], baseline: readonly Station[]) {
  const from = Math.max(own[0]?.lift ?? Number.NaN, baseline[0]?.lift ?? Number.NaN);
  const to = Math.min(own.at(-1)?.lift ?? Number.NaN, baseline.at(-1)?.lift ?? Number.NaN);
  return to > from && !isSameLift(from, to) ? { from, to } : undefined;
}

function comparedMean(
  own: RunResult,
  baseline: RunResult,
  same: ReadonlySet<Station>,
  from: number,
  to: number,
): ComparedMean | undefined {
  const ours = meanWithSpread(own, baseline, same, from, to);
  const theirs = meanWithSpread(baseline, own, same, from, to);
  if (ours === undefined || theirs === undefined || !(theirs.mean > 0)) return undefined;
  const uncertainty = Math.hypot(ours.spread, theirs.spread, scaleUncertainty(own, baseline));
  const { gain, noise, isResolved } = gained(ours.mean / theirs.mean - 1, uncertainty);
  return { from, to, own: ours.mean, baseline: theirs.mean, gain, noise, isResolved };
}

/**
 * The mean of the straight lines between stations, and its relative standard deviation: the mean is a weighted sum of the
 * stations' means, whose scatter is independent (JCGM 100:2008, 5.1.2); with it what the curve bends between stations that
 * the other run does not have as well.
 */
function meanWithSpread(
  { rising, repeatability }: RunResult,
  { rising: others }: RunResult,
  same: ReadonlySet<Station>,
  from: number,
  to: number,
) {
  const curve = rising.map(({ lift, flow }) => ({ lift, value: flow }));
  const mean = meanOver(curve, from, to);
  if (mean === undefined || mean === 0) return undefined;
  const deviation = repeatability.deviation * widening(repeatability);
  let squares = 0;
  for (const [index, station] of rising.entries()) {
    if (same.has(station)) continue;
    const { flow, rows } = station;
    const weight = stationWeight(rising, index, from, to);
    squares += (weight * flow * deviation) ** 2 / rows.length;
  }
  const bend = meanBend(rising, others, from, to);
  return { mean, spread: Math.hypot(Math.sqrt(squares), bend) / Math.abs(mean) };
}

/**
 * Standard uncertainty of a mean from what the curve bends between its stations, m3/s: over a gap h the line is off by
 * |f''| h^2/12 in the mean at most (remainder of the trapezoid rule; Abramowitz and Stegun 25.4.1), all to one side. Where
 * both runs have the same two stations both are off alike.
 */
function meanBend(
  stations: readonly Station[],
  others: readonly Station[],
  from: number,
  to: number,
): number {
  let sum = 0;
  for (const [index, { lift }] of stations.entries()) {
    const below = stations[index - 1]?.lift;
    if (below === undefined || lift <= from || below >= to || isGapOf(others, below, lift)) continue;
    const inside = Math.min(lift, to) - Math.max(below, from);
    sum += (bendAt(stations, index) * (lift - below) ** 2 * inside) / 12;
  }
  return sum / (to - from) / Math.sqrt(3);
}

/** Whether two lifts are stations next to each other. */
function isGapOf(stations: readonly Station[], below: number, lift: number): boolean {
  const at = stations.findIndex((station) => isSameLift(station.lift, lift));
  return at > 0 && isSameLift(below, stations[at - 1]?.lift);
}

/** The share of a station in the mean over a stretch: the part of its triangle between its neighbours that lies in it. */
function stationWeight(stations: readonly Station[], index: number, from: number, to: number): number {
  const here = stations[index]?.lift ?? 0;
  const slope = (end: number | undefined): number => {
    if (end === undefined) return 0;
    const [low, high] = [Math.max(Math.min(here, end), from), Math.min(Math.max(here, end), to)];
    if (!(high > low)) return 0;
    return Math.abs((high - end) ** 2 - (low - end) ** 2) / (2 * Math.abs(here - end));
  };
  return (slope(stations[index - 1]?.lift) + slope(stations[index + 1]?.lift)) / (to - from);
}
