// Finds numbers that stand near a known factor of what the stations around them lead to.
import type { Slip } from "../model/result.ts";

/** 1 in = 25.4 mm, 1 L/s = 2.1189 cfm, 1 cfm = 1.6990 m3/h, and slipped decimal points. */
const FACTORS: readonly number[] = [25.4, 2.1189, 1.699, 10, 100, 1000];
/** How near to a factor a number must be (common practice, no published source). */
const NEARNESS = 0.05;
/** Numbers that differ by less are equal: what is found must not hang on the rounding of a unit. */
const ROUNDING = 1e-9;
/** A slip hides its neighbours; more rounds than this are not one slip but a table of something else. */
const ROUNDS = 8;
/** Nearer to one than this no factor can be near. */
const LEAST_SLIP = 1.6;

/** A point that may be judged; points that may not are left out by the caller. */
export interface SlipPoint {
  readonly lift: number;
  readonly flow: number;
}

/**
 * The slips among points in the order in which they were taken. A flow is set against the straight line between the
 * points before and after it, by lift; a lift against the middle of the two, or the place on that line where its flow
 * belongs. The largest slip is taken first and leaves the others their right neighbours.
 */
export function unitSlips(points: readonly SlipPoint[]): ReadonlyMap<number, Slip> {
  let candidates = suspects(points);
  if (candidates.length === 0) return NONE;
  const slips = new Map<number, Slip>();
  for (let round = 0; round < ROUNDS && candidates.length > 0; round++) {
    const found = new Map<number, Slip>();
    for (const index of candidates) {
      const slip = slipAt(points, index, slips);
      if (slip !== undefined) found.set(index, slip);
    }
    const largest = [...found].filter(([index, slip]) => !isOutdone(points, index, slip, found, slips));
    for (const [index, slip] of largest) slips.set(index, slip);
    candidates = [...found.keys()].filter((index) => !slips.has(index));
  }
  return slips;
}

/** The points that are slips beside their neighbours, whatever these are. */
function suspects(points: readonly SlipPoint[]): number[] {
  const found: number[] = [];
  for (let index = 1; index < points.length - 1; index++) {
    if (slipAt(points, index, NONE) !== undefined) found.push(index);
  }
  return found;
}

const NONE: ReadonlyMap<number, Slip> = new Map();

function slipAt(
  points: readonly SlipPoint[],
  index: number,
  slips: ReadonlyMap<number, Slip>,
): Slip | undefined {
  const before = neighbour(points, index, -1, slips);
  const point = points[index];
  const after = neighbour(points, index, 1, slips);
  if (before === undefined || point === undefined || after === undefined) return undefined;
  return slipOf(before, point, after);
}

/** The next point before (-1) or after (1) that is no slip itself. */
function neighbour(
  points: readonly SlipPoint[],
  index: number,
  step: -1 | 1,
  slips: ReadonlyMap<number, Slip>,
): SlipPoint | undefined {
  let at = index + step;
  while (slips.has(at)) at += step;
  return points[at];
}

/**
 * Whether a neighbour is the larger slip, or as large and further from what stands around the two: of two readings of one
 * lift each is a slip beside the other, and their surroundings tell which.
 */
function isOutdone(
  points: readonly SlipPoint[],
  index: number,
  slip: Slip,
  found: ReadonlyMap<number, Slip>,
  slips: ReadonlyMap<number, Slip>,
): boolean {
  const size = Math.abs(Math.log(slip.factor));
  return [index - 1, index + 1].some((other) => {
    const beside = found.get(other);
    if (beside === undefined) return false;
    const ratio = Math.abs(Math.log(beside.factor)) / size;
    if (Math.abs(ratio - 1) > ROUNDING) return ratio > 1;
    const own = offBy(points, index, new Map([...slips, [other, beside]]));
    return own < offBy(points, other, new Map([...slips, [index, slip]])) * (1 - ROUNDING);
  });
}

/** How far a point is off the line between its neighbours, as a logarithm. */
function offBy(points: readonly SlipPoint[], index: number, without: ReadonlyMap<number, Slip>): number {
  const before = neighbour(points, index, -1, without);
  const point = points[index];
  const after = neighbour(points, index, 1, without);
  if (before === undefined || point === undefined || after === undefined) return 0;
  const off = isBetween(before, point, after)
    ? Math.log(point.flow / lineAt(before, after, point.lift))
    : Math.log((2 * point.lift) / (before.lift + after.lift));
  return Number.isNaN(off) ? 0 : Math.abs(off);
}

function isBetween(before: SlipPoint, point: SlipPoint, after: SlipPoint): boolean {
  return (point.lift - before.lift) * (point.lift - after.lift) <= 0;
}

/** Flow at a lift on the straight line between two points; their mean where both are at one lift. */
function lineAt(before: SlipPoint, after: SlipPoint, lift: number): number {
  const span = after.lift - before.lift;
  const share = span === 0 ? 0.5 : (lift - before.lift) / span;
  return before.flow + share * (after.flow - before.flow);
}

function slipOf(before: SlipPoint, point: SlipPoint, after: SlipPoint): Slip | undefined {
  if (isBetween(before, point, after)) return near("flow", point.flow, lineAt(before, after, point.lift));
  if (before.lift === after.lift) return undefined;
  const middle = near("lift", point.lift, (before.lift + after.lift) / 2);
  if (middle !== undefined || before.flow === after.flow) return middle;
  const share = (point.flow - before.flow) / (after.flow - before.flow);
  if (!(share >= 0 && share <= 1)) return undefined;
  return near("lift", point.lift, before.lift + share * (after.lift - before.lift));
}

function near(column: Slip["column"], written: number, expected: number): Slip | undefined {
  const factor = written / expected;
  if (!(factor > 0) || !Number.isFinite(factor) || (factor < LEAST_SLIP && factor > 1 / LEAST_SLIP))
    return undefined;
  for (const known of FACTORS) {
    for (const candidate of [known, 1 / known]) {
      if (Math.abs(factor / candidate - 1) <= NEARNESS + ROUNDING)
        return { column, factor, near: candidate, expected };
    }
  }
  return undefined;
}
