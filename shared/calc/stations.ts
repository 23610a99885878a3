// Averages the rows of a run lift by lift, each branch by itself, and gives each station its slope and uncertainty.
import type { Branch, RowNumbers, RowResult, Station } from "../model/result.ts";
import type { ComputedRows } from "./computed-rows.ts";
import { slopeAt } from "./slope-at.ts";

/** What all stations of a run share. */
export interface StationTerms {
  /** One standard deviation of one reading, relative. */
  readonly deviation: number;
  /** Standard uncertainty of a set lift, m. */
  readonly liftSetting: number;
  /** Standard uncertainty of the bench's flow scale, relative. */
  readonly scale: number;
}

/** The stations of one branch by rising lift, as columns of numbers. */
export interface Means {
  readonly lift: readonly number[];
  /** Arithmetic means of corrected flow. */
  readonly flow: readonly number[];
  /** The places of the rows that were averaged, station by station, and of one station in the order in which they were taken. */
  readonly rows: readonly number[];
  /** Where in `rows` each station ends; missing where each is of one row. */
  readonly end: readonly number[] | undefined;
}

const NO_MEANS: Means = { lift: [], flow: [], rows: [], end: undefined };

/** The means of the rows at the places `own`, which are in the order in which they were taken. */
export function meansOf(
  own: readonly number[],
  { lift, corrected }: Pick<RowNumbers, "lift" | "corrected">,
): Means {
  if (own.length === 0) return NO_MEANS;
  // By rising lift, rows of one lift in the order in which they were taken.
  const rows = own.toSorted((a, b) => (lift[a] ?? Number.NaN) - (lift[b] ?? Number.NaN));
  const lifts: number[] = [];
  const flows: number[] = [];
  const ends: number[] = [];
  let begin = 0;
  let sum = 0;
  for (const [at, row] of rows.entries()) {
    sum += corrected[row] ?? Number.NaN;
    const next = rows[at + 1];
    if (next !== undefined && lift[next] === lift[row]) continue;
    lifts.push(lift[row] ?? Number.NaN);
    flows.push(sum / (at + 1 - begin));
    ends.push(at + 1);
    begin = at + 1;
    sum = 0;
  }
  return { lift: lifts, flow: flows, rows, end: ends };
}

/**
 * Whether a run was read once from the lowest lift to the highest, and all of it counts: its rows are its stations as they
 * stand. Most runs are such a sweep.
 */
function isSweep({ complete, lift, slips, impossible }: ComputedRows): boolean {
  if (complete.length < lift.length || slips.size > 0 || impossible.size > 0) return false;
  for (let at = 1; at < lift.length; at++) {
    if (!((lift[at] ?? 0) > (lift[at - 1] ?? 0))) return false;
  }
  return true;
}

const NO_STATIONS: readonly Station[] = [];

/** The averages of a run. Stations become objects only for those who want them: most are only compared. */
export class Averages {
  /** The places of the rows that are averaged, in the order in which they were taken. */
  readonly usable: readonly number[];
  readonly means: Readonly<Record<Branch, Means>>;
  readonly #rows: ComputedRows;
  readonly #terms: StationTerms;
  #rising: readonly Station[] | undefined = undefined;
  #falling: readonly Station[] | undefined = undefined;

  constructor(rows: ComputedRows, terms: StationTerms) {
    if (isSweep(rows)) {
      this.usable = rows.complete;
      const rising = { lift: rows.lift, flow: rows.corrected, rows: rows.complete, end: undefined };
      this.means = { rising, falling: NO_MEANS };
    } else {
      const usable = rows.complete.filter((at) => rows.isUsable(at));
      const of = (branch: Branch) =>
        meansOf(
          usable.filter((at) => rows.branch[at] === branch),
          rows,
        );
      this.usable = usable;
      this.means = { rising: of("rising"), falling: of("falling") };
    }
    this.#rows = rows;
    this.#terms = terms;
  }

  get rising(): readonly Station[] {
    this.#rising ??= this.#stations(this.means.rising);
    return this.#rising;
  }

  get falling(): readonly Station[] {
    this.#falling ??= this.#stations(this.means.falling);
    return this.#falling;
  }

  /** Those that average more than one reading, rising ones first. */
  get repeated(): readonly Station[] {
    const { rising, falling } = this.means;
    if (rising.lift.length + falling.lift.length === this.usable.length) return NO_STATIONS;
    return [...this.rising, ...this.falling].filter(({ rows }) => rows.length > 1);
  }

  #stations(means: Means): readonly Station[] {
    if (means === NO_MEANS) return NO_STATIONS;
    const stations: AveragedStation[] = [];
    for (let at = 0; at < means.lift.length; at++) {
      stations.push(new AveragedStation(this.#rows, means, at, this.#terms));
    }
    return stations;
  }

  /**
   * Expanded relative uncertainty (k = 2) of a row by itself: one reading, on the slope of its branch; one that is left out
   * of the means has its lift to set, too. `undefined` without a flow.
   */
  uncertaintyOf(at: number): number | undefined {
    const { lift, corrected, branch } = this.#rows;
    const flow = corrected[at] ?? Number.NaN;
    if (Number.isNaN(flow)) return undefined;
    // A void row belongs to no branch; it stands on the rising one, if there is one.
    const isOnFalling = branch[at] === "falling" || this.means.rising.lift.length === 0;
    const own = lift[at] ?? Number.NaN;
    const slope = Number.isNaN(own) ? 0 : slopeAt(isOnFalling ? this.falling : this.rising, own);
    return expanded(flow, slope, this.#rows.variance(at), 1, this.#terms);
  }
}

/** One station; all but its lift and flow is worked out when it is asked for. */
class AveragedStation implements Station {
  readonly lift: number;
  readonly flow: number;
  readonly #run: ComputedRows;
  readonly #means: Means;
  readonly #at: number;
  readonly #terms: StationTerms;
  #rows: readonly RowResult[] | undefined = undefined;

  constructor(run: ComputedRows, means: Means, at: number, terms: StationTerms) {
    this.lift = means.lift[at] ?? Number.NaN;
    this.flow = means.flow[at] ?? Number.NaN;
    this.#run = run;
    this.#means = means;
    this.#at = at;
    this.#terms = terms;
  }

  get rows(): readonly RowResult[] {
    this.#rows ??= this.#places().flatMap((at) => this.#run.results[at] ?? []);
    return this.#rows;
  }

  /** Central difference of the means on lift, one-sided at the ends, 0 for a lone station. */
  get slope(): number {
    const { lift, flow } = this.#means;
    const below = Math.max(0, this.#at - 1);
    const above = Math.min(lift.length - 1, this.#at + 1);
    const span = (lift[above] ?? 0) - (lift[below] ?? 0);
    return span === 0 ? 0 : ((flow[above] ?? 0) - (flow[below] ?? 0)) / span;
  }

  get uncertainty(): number {
    const places = this.#places();
    const variance = places.reduce((sum, at) => sum + this.#run.variance(at), 0) / places.length;
    return expanded(this.flow, this.slope, variance, places.length, this.#terms);
  }

  #places(): readonly number[] {
    const { rows, end } = this.#means;
    return end === undefined
      ? rows.slice(this.#at, this.#at + 1)
      : rows.slice(end[this.#at - 1] ?? 0, end[this.#at]);
  }
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
