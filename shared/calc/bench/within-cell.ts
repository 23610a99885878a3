// How well a bench repeats, pooled from every point that was taken more than once, against what the bench claims.
import { deviationInterval } from "../chi-square.ts";
import { pooledRelativeDeviation } from "../pooled-deviation.ts";
import type { BenchVisits } from "./bench-visits.ts";

/** Relative, one standard deviation of one reading. */
export interface WithinCell {
  readonly deviation: number;
  readonly degreesOfFreedom: number;
  /** Two-sided 95 % confidence interval. */
  readonly low: number;
  readonly high: number;
  readonly cells: number;
  /** Cells among them that are readings of a check plate. */
  readonly plateCells: number;
  /** What the bench block states. */
  readonly claimed?: number;
  /** What the repeats say of the claim: `kept`, or outside the interval on the better or the worse side. */
  readonly verdict?: "kept" | "repeats-worse" | "repeats-better";
}

/**
 * Readings of one lift and branch of one run, or of one plate check, are a cell; the variance is the mean of the cells'
 * relative variances weighted with n - 1 (ISO 5725-2:1994, 7.4.4, repeatability in proportion to the level), its interval
 * from chi-square. `undefined` where nothing was read twice.
 */
export function withinCell(visits: BenchVisits): WithinCell | undefined {
  const runs = repeatedCells(visits);
  const plates = plateCells(visits);
  const pooled = pooledRelativeDeviation([...runs, ...plates]);
  if (pooled === undefined) return undefined;
  const { deviation, degreesOfFreedom } = pooled;
  const interval = deviationInterval(deviation, degreesOfFreedom);
  if (interval === undefined) return undefined;
  const counts = { cells: runs.length + plates.length, plateCells: plates.length };
  const found = { deviation, degreesOfFreedom, ...interval, ...counts };
  const claimed = visits.bench.repeat?.value;
  if (claimed === undefined || !(claimed > 0)) return found;
  const verdict =
    claimed < interval.low ? "repeats-worse" : claimed > interval.high ? "repeats-better" : "kept";
  return { ...found, claimed, verdict };
}

/** Corrected flows of the stations that average more than one reading. */
function repeatedCells({ visits }: BenchVisits): readonly (readonly number[])[] {
  return visits
    .flatMap(({ runs }) => runs)
    .flatMap(({ repeated }) => repeated)
    .map(({ rows }) => rows.flatMap(({ flow }) => flow?.corrected ?? []));
}

function plateCells({ visits }: BenchVisits): readonly (readonly number[])[] {
  return visits
    .flatMap(({ plates }) => plates)
    .map(({ rows }) =>
      rows.flatMap(({ row, flow }) => (row.void === undefined ? (flow?.corrected ?? []) : [])),
    )
    .filter((cell) => cell.length > 1);
}
