// Finds the step in a series that explains most of it, and how often noise alone looks like that.
import { studentTail } from "../student.ts";
import { neighbourCorrelation } from "./effective-size.ts";
import { standsOut } from "./jump.ts";
import { normalNumbers } from "./noise.ts";

/** A series and the smooth things that are in it without any step, one column each; all of one length. */
export interface Series {
  readonly values: Float64Array;
  readonly smooth: readonly Float64Array[];
  /** Standard deviations of the values' noise relative to each other. */
  readonly scatter: Float64Array;
}

export interface Step {
  /** The first value behind the step. */
  readonly index: number;
  readonly size: number;
  /** Standard error of the size. */
  readonly error: number;
  /** Chance that noise of the same kind makes a step as clear as this anywhere; at most. */
  readonly chance: number;
}

/** Fewer values on one side of a step say nothing of a level. */
const LEAST_SIDE = 3;
/** Noise that hangs together more than this cannot be told from a drift. */
const MOST_CORRELATION = 0.98;
/** A step this unclear is never significant: the limit for two places alone is higher. */
const NEVER = 2.8;
/** Below this the sum of the chances of all places is good enough, and is an upper bound. */
const CLEAR = 1e-7;
/** A shorter series does not tell how its noise hangs together; its step must be clearer in proportion. */
const ENOUGH = 100;
/** Standard errors by which a correlation may be larger than it was found. */
const DOUBT = 2;
const SIMULATIONS = 199;
/** So many series, twice, tell how much of a correlation a fit takes away. */
const PILOT = 25;
const SEED = 20261125;

/**
 * The most likely step, `undefined` where noise does as well in more than `level` of series. The series is taken as smooth
 * columns plus a step plus noise of which each value hangs on the one before (first-order autoregression). The step's
 * t is the largest over all places after whitening by the correlation that is left with the step taken out; its
 * distribution is that of simulated series without a step, put through the same (G. A. Barnard, J. R. Statist. Soc. B 25
 * (1963) 294; the bootstrap of a fitted model), and the jump itself must stand out (see `jump.ts`), since noise need not be of that
 * kind. Places nearer than `LEAST_SIDE` to an end or to one of `taken` are left out.
 */
export function mostLikelyStep(
  series: Series,
  level: number,
  taken: readonly number[] = [],
): Step | undefined {
  const scaled = scaledBy(series);
  const found = whitenedScan(scaled, taken);
  if (found === undefined || Math.abs(found.t) < NEVER) return undefined;
  if (!comesAtOnce(scaled, found, level)) return undefined;
  const strict = level * Math.min(1, series.values.length / ENOUGH);
  const summed = 2 * found.places * studentTail(Math.abs(found.t), found.degrees);
  const chance = summed < CLEAR ? summed : simulatedChance(scaled, taken, found, strict);
  return chance <= strict ? { index: found.at, size: found.size, error: found.error, chance } : undefined;
}

/** Whether the step's jump stands out among those of the series without it. */
function comesAtOnce({ values, basis, unit }: Scaled, { at, size }: Scan, level: number): boolean {
  const behind = unit.map((value, place) => (place < at ? 0 : value));
  const known = withColumn(basis, behind);
  const added = behind.map((value) => size * value);
  return standsOut(orthogonal(values, known), added, at, known.length, level);
}

/** Everything divided by the noise's standard deviation; `unit` is what a step of 1 becomes. */
interface Scaled {
  readonly values: Float64Array;
  readonly smooth: readonly Float64Array[];
  /** Columns of length 1 at right angles that span the smooth ones. */
  readonly basis: readonly Float64Array[];
  readonly unit: Float64Array;
}

interface Scan {
  readonly at: number;
  readonly size: number;
  readonly error: number;
  readonly t: number;
  readonly degrees: number;
  readonly places: number;
}

function scaledBy({ values, smooth, scatter }: Series): Scaled {
  const divided = (column: Float64Array) => column.map((value, at) => value / (scatter[at] ?? 1));
  const columns = smooth.map(divided);
  return {
    values: divided(values),
    smooth: columns,
    basis: orthonormal(columns),
    unit: scatter.map((value) => 1 / value),
  };
}

interface WhitenedScan extends Scan {
  /** Of neighbours, with the step taken out. */
  readonly correlation: number;
}

function whitenedScan(scaled: Scaled, taken: readonly number[]): WhitenedScan | undefined {
  const plain = scan(scaled, scaled.unit, taken);
  if (plain === undefined) return undefined;
  const step = scaled.unit.map((value, at) => (at < plain.at ? 0 : value));
  const left = orthogonal(scaled.values, withColumn(scaled.basis, step));
  const correlation = neighbourCorrelation(left);
  const used = usable(correlation);
  if (used === 0) return { ...plain, correlation };
  const smooth = scaled.smooth.map((column) => whitened(column, used));
  const white = {
    values: whitened(scaled.values, used),
    smooth,
    basis: orthonormal(smooth),
    unit: scaled.unit,
  };
  const later = scaled.unit.map((value, at) => value - used * (scaled.unit[at - 1] ?? 0));
  const found = scan(white, later, taken);
  return found && { ...found, correlation };
}

function usable(correlation: number): number {
  return Math.min(MOST_CORRELATION, Math.max(0, correlation));
}

/** Each value less what hangs on the one before; the first as if it came from a series that had gone on for long. */
function whitened(values: Float64Array, correlation: number): Float64Array {
  return values.map((value, at) =>
    at === 0 ? value * Math.sqrt(1 - correlation * correlation) : value - correlation * (values[at - 1] ?? 0),
  );
}

/** The place whose step has the largest t; a step adds `unit` at its place and `later` behind it. */
function scan(
  { values, basis, unit }: Scaled,
  later: Float64Array,
  taken: readonly number[],
): Scan | undefined {
  const count = values.length;
  const left = orthogonal(values, basis);
  const degrees = count - basis.length - 1;
  if (degrees < 1) return undefined;
  const sum = dot(left, left);
  const behind = new Float64Array(basis.length);
  let lengthBehind = 0;
  let leftBehind = 0;
  let best: Scan | undefined;
  let places = 0;
  for (let at = count - 1; at >= LEAST_SIDE; at--) {
    const here = unit[at] ?? 1;
    const next = later[at] ?? 1;
    if (at <= count - LEAST_SIDE && !taken.some((other) => Math.abs(other - at) < LEAST_SIDE)) {
      let own = lengthBehind + here * here;
      const whole = own;
      for (let j = 0; j < basis.length; j++) own -= ((behind[j] ?? 0) + here * (basis[j]?.[at] ?? 0)) ** 2;
      if (own > 1e-6 * whole) {
        places++;
        const along = leftBehind + here * (left[at] ?? 0);
        const variance = Math.max(sum - (along * along) / own, Number.MIN_VALUE) / degrees;
        const t = along / Math.sqrt(own * variance);
        if (best === undefined || Math.abs(t) > Math.abs(best.t)) {
          best = { at, size: along / own, error: Math.sqrt(variance / own), t, degrees, places };
        }
      }
    }
    lengthBehind += next * next;
    leftBehind += next * (left[at] ?? 0);
    for (let j = 0; j < basis.length; j++) {
      behind[j] = (behind[j] ?? 0) + next * (basis[j]?.[at] ?? 0);
    }
  }
  return best && { ...best, places };
}

/** How often series of smooth columns and such noise alone have a step as clear as the one found. */
function simulatedChance(
  { smooth, basis, unit }: Scaled,
  taken: readonly number[],
  found: WhitenedScan,
  level: number,
): number {
  const normal = normalNumbers(SEED);
  const draw = (correlation: number): WhitenedScan | undefined => {
    const values = new Float64Array(unit.length);
    const share = Math.sqrt(1 - correlation * correlation);
    for (let at = 0, before = normal(); at < values.length; at++) {
      before = at === 0 ? before : correlation * before + share * normal();
      values[at] = before;
    }
    return whitenedScan({ values, smooth, basis, unit }, taken);
  };
  // What is left after a fit hangs together less than the noise did; by how much, a few series tell.
  let correlation = usable(found.correlation);
  for (let round = 0; round < 2; round++) {
    const pilots = Array.from({ length: PILOT }, () => draw(correlation)?.correlation ?? 0);
    const mean = pilots.reduce((sum, value) => sum + value, 0) / PILOT;
    correlation = usable(correlation + found.correlation - mean);
  }
  // A short series does not tell its correlation well; the doubt goes against the step.
  correlation = usable(correlation + DOUBT * Math.sqrt((1 - correlation * correlation) / unit.length));
  let clearer = 0;
  for (let drawn = 1; drawn <= SIMULATIONS; drawn++) {
    if (Math.abs(draw(correlation)?.t ?? 0) >= Math.abs(found.t)) clearer++;
    if (clearer > level * (SIMULATIONS + 1)) return 1;
  }
  return (clearer + 1) / (SIMULATIONS + 1);
}

/** Columns of length 1 at right angles that span the same; those that add nothing are left out. */
function orthonormal(columns: readonly Float64Array[]): readonly Float64Array[] {
  return columns.reduce<readonly Float64Array[]>(withColumn, []);
}

/** A basis with what one more column adds to it. */
function withColumn(basis: readonly Float64Array[], column: Float64Array): readonly Float64Array[] {
  // Twice, since the first time leaves rounding behind.
  const left = orthogonal(orthogonal(column, basis), basis);
  const length = Math.sqrt(dot(left, left));
  if (!(length > 1e-8 * Math.sqrt(dot(column, column)))) return basis;
  return [...basis, left.map((value) => value / length)];
}

/** What is left of a column once all that the basis explains is taken out. */
function orthogonal(column: Float64Array, basis: readonly Float64Array[]): Float64Array {
  const left = column.slice();
  for (const axis of basis) {
    const share = dot(left, axis);
    for (let at = 0; at < left.length; at++) left[at] = (left[at] ?? 0) - share * (axis[at] ?? 0);
  }
  return left;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += (a[at] ?? 0) * (b[at] ?? 0);
  return sum;
}
