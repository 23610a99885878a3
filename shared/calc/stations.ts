// Averages the rows of one branch lift by lift, and gives each station its slope and uncertainty.
import type { Branch, RowResult, Station } from "../model/result.ts";

/** What all stations of a run share. */
export interface StationTerms {
  /** One standard deviation of one reading, relative. */
  readonly deviation: number;
  /** Standard uncertainty of a set lift, m. */
  readonly liftSetting: number;
  /** Standard uncertainty of the bench's flow scale, relative. */
  readonly scale: number;
}

/** The stations of one branch by rising lift; `rows` are those that may be used. Means are arithmetic. */
export function stationsOf(branch: Branch, rows: readonly RowResult[], terms: StationTerms): Station[] {
  const own = rows.filter((row) => row.branch === branch && row.lift !== undefined && row.flow !== undefined);
  const stations: AveragedStation[] = [];
  if (own.length === 0) return stations;
  let group: RowResult[] = [];
  for (const row of inOrder(own)) {
    if (row.lift === group[0]?.lift) {
      group.push(row);
      continue;
    }
    if (group.length > 0) stations.push(new AveragedStation(group, stations, terms));
    // Most stations are one row, and what is pushed to an empty list takes room for many.
    group = [row];
  }
  if (group.length > 0) stations.push(new AveragedStation(group, stations, terms));
  return stations;
}

/** By rising lift, rows of one lift in the order in which they were taken. */
function inOrder(rows: readonly RowResult[]): readonly RowResult[] {
  const lift = (row: RowResult | undefined) => row?.lift ?? Number.NEGATIVE_INFINITY;
  const isRising = rows.every((row, index) => lift(row) >= lift(rows[index - 1]));
  return isRising ? rows : rows.toSorted((a, b) => lift(a) - lift(b));
}

/** One station; its slope and uncertainty are worked out when they are asked for, since most are only compared. */
class AveragedStation implements Station {
  readonly lift: number;
  readonly flow: number;
  readonly rows: readonly RowResult[];
  readonly #branch: readonly Station[];
  readonly #at: number;
  readonly #terms: StationTerms;

  /** `branch` are the stations of the branch that it is about to join. */
  constructor(rows: readonly RowResult[], branch: readonly Station[], terms: StationTerms) {
    this.rows = rows;
    this.lift = rows[0]?.lift ?? Number.NaN;
    this.flow = meanOf(rows, ({ flow }) => flow?.corrected ?? Number.NaN);
    this.#branch = branch;
    this.#at = branch.length;
    this.#terms = terms;
  }

  /** Central difference of the means on lift, one-sided at the ends, 0 for a lone station. */
  get slope(): number {
    const below = this.#branch[this.#at - 1] ?? this;
    const above = this.#branch[this.#at + 1] ?? this;
    return above.lift === below.lift ? 0 : (above.flow - below.flow) / (above.lift - below.lift);
  }

  get uncertainty(): number {
    const variance = meanOf(this.rows, (row) => row.variance);
    return expanded(this.flow, this.slope, variance, this.rows.length, this.#terms);
  }
}

function meanOf(rows: readonly RowResult[], value: (row: RowResult) => number): number {
  let sum = 0;
  for (const row of rows) sum += value(row);
  return sum / rows.length;
}

/**
 * Expanded relative uncertainty (k = 2) of a mean of `count` rows: repeatability, written numbers and air, lift setting
 * on the slope of the curve, and the bench's scale (JCGM 100:2008, 5.1.2; the terms do not depend on each other).
 */
export function expanded(
  flow: number,
  slope: number,
  variance: number,
  count: number,
  { deviation, liftSetting, scale }: StationTerms,
): number {
  const lift = flow === 0 ? 0 : (slope * liftSetting) / flow;
  return 2 * Math.sqrt(deviation ** 2 / count + variance + lift ** 2 + scale ** 2);
}
