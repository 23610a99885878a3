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

/** Points that may be judged, as columns; points that may not are left out by the caller. */
export interface SlipPoints {
  readonly lift: readonly number[];
  readonly flow: readonly number[];
}

/**
 * The slips among points in the order in which they were taken. A flow is set against the straight line between the
 * points before and after it, by lift; a lift against the middle of the two, or the place on that line where its flow
 * belongs. The largest slip is taken first and leaves the others their right neighbours.
 */
export function unitSlips(points: SlipPoints): ReadonlyMap<number, Slip> {
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
function suspects(points: SlipPoints): number[] {
  const found: number[] = [];
  for (let index = 1; index < points.lift.length - 1; index++) {
    if (slipBetween(points, index - 1, index, index + 1) !== undefined) found.push(index);
  }
  return found;
}

const NONE: ReadonlyMap<number, Slip> = new Map();

function slipAt(points: SlipPoints, index: number, slips: ReadonlyMap<number, Slip>): Slip | undefined {
  const before = neighbour(index, -1, slips);
  const after = neighbour(index, 1, slips);
  return slipBetween(points, before, index, after);
}

/** The place of the next point before (-1) or after (1) that is no slip itself; there may be none. */
function neighbour(index: number, step: -1 | 1, slips: ReadonlyMap<number, Slip>): number {
  let at = index + step;
  while (slips.has(at)) at += step;
  return at;
}

/**
 * Whether a neighbour is the larger slip, or as large and further from what stands around the two: of two readings of one
 * lift each is a slip beside the other, and their surroundings tell which.
 */
function isOutdone(
  points: SlipPoints,
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
function offBy({ lift, flow }: SlipPoints, index: number, without: ReadonlyMap<number, Slip>): number {
  const [before, after] = [neighbour(index, -1, without), neighbour(index, 1, without)];
  const [x0, x, x1] = [lift[before], lift[index], lift[after]];
  const [y0, y, y1] = [flow[before], flow[index], flow[after]];
  if (x0 === undefined || x === undefined || x1 === undefined) return 0;
  if (y0 === undefined || y === undefined || y1 === undefined) return 0;
  const off = isBetween(x0, x, x1) ? Math.log(y / lineAt(x0, y0, x1, y1, x)) : Math.log((2 * x) / (x0 + x1));
  return Number.isNaN(off) ? 0 : Math.abs(off);
}

function isBetween(before: number, lift: number, after: number): boolean {
  return (lift - before) * (lift - after) <= 0;
}

/** Flow at the lift `x` on the straight line between two points; their mean where both are at one lift. */
function lineAt(x0: number, y0: number, x1: number, y1: number, x: number): number {
  const span = x1 - x0;
  const share = span === 0 ? 0.5 : (x - x0) / span;
  return y0 + share * (y1 - y0);
}

/** The slip that a point is between two others; every point of every run is asked, so that it is told by numbers alone. */
function slipBetween(
  { lift, flow }: SlipPoints,
  before: number,
  index: number,
  after: number,
): Slip | undefined {
  const x0 = lift[before];
  const x = lift[index];
  const x1 = lift[after];
  const y0 = flow[before];
  const y = flow[index];
  const y1 = flow[after];
  if (x0 === undefined || x === undefined || x1 === undefined) return undefined;
  if (y0 === undefined || y === undefined || y1 === undefined) return undefined;
  if (isBetween(x0, x, x1)) return near("flow", y, lineAt(x0, y0, x1, y1, x));
  if (x0 === x1) return undefined;
  const middle = near("lift", x, (x0 + x1) / 2);
  if (middle !== undefined || y0 === y1) return middle;
  const share = (y - y0) / (y1 - y0);
  if (!(share >= 0 && share <= 1)) return undefined;
  return near("lift", x, x0 + share * (x1 - x0));
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
