// Flow on the way down beside flow on the way up: where they differ, the port has two states.
import type { RowResult, RunResult, Station } from "../model/result.ts";
import { chanceOfMarks } from "./chance-of-marks.ts";
import { widening } from "./repeatability.ts";
import { returnRow } from "./return-row.ts";

/** Two-sided 95 % point of the normal distribution. */
const TWO_SIDED_95 = 1.96;

/** The readings of one lift and direction, averaged; m3/s. */
export interface Branched {
  readonly flow: number;
  readonly rows: readonly RowResult[];
}

/** One lift that was read on the way up and on the way down. */
export interface TwoWay {
  /** m */
  readonly lift: number;
  readonly rising: Branched;
  readonly falling: Branched;
  /** Of the falling mean from the rising one, relative to that. */
  readonly difference: number;
  /** What the two differ by at most in 95 % of cases where direction makes no difference, relative. */
  readonly chance: number;
  readonly resolved: boolean;
}

/** What a sweep up and down says of its port as a whole. */
export interface TwoWaySweep {
  /** The lifts that differ, by rising lift; one at least. */
  readonly differing: readonly TwoWay[];
  /** The one that stands furthest beyond its limit. */
  readonly clearest: TwoWay;
  /** How many lifts were read in both directions. */
  readonly lifts: number;
  /** Chance that a sweep in which direction makes no difference has one such lift or more. */
  readonly chanceOfOne: number;
  /** The same of as many as there are here or more. */
  readonly chanceOfAll: number;
}

/**
 * The differing lifts of a run taken together: each has a limit of its own, so that among many some pass it by chance.
 * `undefined` where none differs.
 */
export function twoWaySweep(result: RunResult): TwoWaySweep | undefined {
  if (result.falling.length === 0) return undefined;
  const all = hysteresis(result);
  const differing = all.filter(({ resolved }) => resolved);
  const [first] = differing;
  if (first === undefined) return undefined;
  const clearness = ({ difference, chance }: TwoWay) => Math.abs(difference) / chance;
  const { repeatability } = result;
  const limit = TWO_SIDED_95 * widening(repeatability);
  const chanceOf = (marked: number) =>
    chanceOfMarks(marked, all.length, limit, repeatability.degreesOfFreedom);
  return {
    differing,
    clearest: differing.reduce((most, two) => (clearness(two) > clearness(most) ? two : most), first),
    lifts: all.length,
    chanceOfOne: chanceOf(1),
    chanceOfAll: chanceOf(differing.length),
  };
}

/**
 * The lifts of a run that were read in both directions, by rising lift. Two means of n1 and n2 readings differ by chance
 * by no more than 1.96 s sqrt(1/n1 + 1/n2) in 95 % of cases (s relative repeatability; widened by t/z where it is pooled).
 * A last row that returns to the first row's lift takes no part: it tells of drift. Source: the two-sided test of a
 * difference of two means with known standard deviation (JCGM 100:2008, 4.2.3 and G.3).
 */
export function hysteresis(result: RunResult): readonly TwoWay[] {
  const back = returnRow(result);
  const rising = new Map(result.rising.map((station) => [station.lift, station]));
  const deviation = result.repeatability.deviation * widening(result.repeatability);
  return result.falling.flatMap((station): readonly TwoWay[] => {
    const up = without(rising.get(station.lift), back);
    const down = without(station, back);
    if (up === undefined || down === undefined || !(up.flow > 0)) return [];
    const difference = down.flow / up.flow - 1;
    const chance = TWO_SIDED_95 * deviation * Math.sqrt(1 / up.rows.length + 1 / down.rows.length);
    const resolved = Math.abs(difference) > chance;
    return [{ lift: station.lift, rising: up, falling: down, difference, chance, resolved }];
  });
}

function without(station: Station | undefined, back: RowResult | undefined): Branched | undefined {
  if (station === undefined || back === undefined || !station.rows.includes(back)) return station;
  const rows = station.rows.filter((row) => row !== back);
  if (rows.length === 0) return undefined;
  return { flow: rows.reduce((sum, { flow }) => sum + (flow?.corrected ?? 0), 0) / rows.length, rows };
}
