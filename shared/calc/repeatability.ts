// How well a bench repeats: as it states, else pooled from repeated readings, else a default.
import type { Bench } from "../model/model.ts";
import type { Repeatability } from "../model/result.ts";
import { pooledRelativeDeviation } from "./pooled-deviation.ts";
import { studentQuantile } from "./student.ts";

/** Relative standard deviation of one reading where nothing is known (common practice, no published source). */
const DEFAULT_DEVIATION = 0.01;
/** A deviation pooled from fewer degrees of freedom says too little. */
const LEAST_DEGREES = 4;
const NORMAL_95 = 1.6448536269514722;

/**
 * The repeatability of a bench. `cells` are the corrected flows of all runs of a file on that bench, in one cell what was
 * read at one lift and direction of one run (ISO 5725-2, within-cell term, relative).
 */
export function repeatabilityOf(
  bench: Bench | undefined,
  cells: readonly (readonly number[])[],
): Repeatability {
  if (bench?.repeat !== undefined && bench.repeat.value > 0) {
    return { deviation: bench.repeat.value, source: "bench" };
  }
  const pooled = pooledRelativeDeviation(cells);
  if (pooled !== undefined && pooled.degreesOfFreedom >= LEAST_DEGREES && pooled.deviation > 0) {
    return { deviation: pooled.deviation, source: "pooled", degreesOfFreedom: pooled.degreesOfFreedom };
  }
  return { deviation: DEFAULT_DEVIATION, source: "default" };
}

/**
 * What limits in units of a pooled deviation are widened by: the ratio of the one-sided 95 % points of Student's t and
 * of the normal distribution; 1 for a deviation that is known.
 */
export function widening({ degreesOfFreedom }: Repeatability): number {
  if (degreesOfFreedom === undefined) return 1;
  return (studentQuantile(0.95, degreesOfFreedom) ?? NORMAL_95) / NORMAL_95;
}
