// Chance alone makes a flat curve fall back somewhere, the more stations the further: this says how far.

import { estimatedDeviations } from "./estimated-deviation.ts";
import { normalCdf, normalPdf, normalQuantile } from "./normal.ts";
import { risingRoot } from "./rising-root.ts";
import { studentQuantile } from "./student.ts";

const step = 0.125;
const lowest = -7;
const nodeCount = 121;

/** Where the integral is taken, with chance and density of a standard normal there; made when first asked for. */
let standard: ReturnType<typeof standardNormal> | undefined;

function standardNormal() {
  const nodes = Array.from({ length: nodeCount }, (_, index) => lowest + index * step);
  return {
    nodes,
    chances: Float64Array.from(nodes, normalCdf),
    densities: Float64Array.from(nodes, normalPdf),
  };
}

/**
 * Chance that one of `count` independent standard normals lies more than `threshold` below an earlier one.
 *
 * `density` is that of the running maximum where no such drop has come yet. The next value makes the drop, or
 * stays between it and the maximum, or becomes the maximum itself: f(m) [Phi(m) - Phi(m - c)] + phi(m) F(m).
 * F is the integral of the cubic through four nodes; the drops are summed rather than what is left, so that its
 * error counts in proportion to a small chance.
 */
function chanceOfDrop(count: number, threshold: number): number {
  standard ??= standardNormal();
  const { nodes, chances, densities } = standard;
  const drops = Float64Array.from(nodes, (node) => normalCdf(node - threshold));
  const density = new Float64Array(nodeCount + 1);
  density.set(densities);
  let dropped = 0;
  for (let station = 1; station < count; station += 1) {
    let secondLast = 0;
    let last = 0;
    let here = 0;
    let next = density[0] ?? 0;
    let below = 0;
    for (let index = 0; index < nodeCount; index += 1) {
      secondLast = last;
      last = here;
      here = next;
      next = density[index + 1] ?? 0;
      below += (step / 24) * (13 * (last + here) - secondLast - next);
      const drop = drops[index] ?? 0;
      dropped += here * drop;
      density[index] = here * ((chances[index] ?? 0) - drop) + (densities[index] ?? 0) * below;
    }
  }
  return step * dropped;
}

const known = new Map<string, number>();

/** Beyond this many readings the quantile is worked out at powers of two only. */
const mostExact = 256;

/**
 * Largest drop that `count` readings of a flat curve, taken in order, do not exceed with chance `level`, in units
 * of the standard uncertainty of one difference: 1.645, 2.081, 2.329 for 2, 3, 4 readings at 95 %. To 2e-6 up to
 * 100 readings; beyond 256 between powers of two by its square over the logarithm of the count, which is straight to
 * within 5e-4 and errs on the safe side.
 *
 * The drop is that of any later reading below any earlier one; the readings are independent and normal with one
 * standard deviation s, and the unit is s times the root of 2. A curve that truly rises drops less. `undefined` for a count that is not
 * a whole number from 2 up, and a level outside 0.5 to 0.9999.
 *
 * Source: derived here by recursion on the running maximum; for 2 readings it is the one-sided normal quantile.
 */
export function flatDropQuantile(count: number, level = 0.95): number | undefined {
  if (!(Number.isInteger(count) && count >= 2 && level >= 0.5 && level <= 0.9999)) return undefined;
  if (count <= mostExact) return exactQuantile(count, level);
  const power = Math.floor(Math.log2(count));
  const [below, above] = [exactQuantile(2 ** power, level), exactQuantile(2 ** (power + 1), level)];
  if (below === undefined || above === undefined) return undefined;
  const share = Math.log2(count) - power;
  return Math.sqrt((1 - share) * below ** 2 + share * above ** 2);
}

/** By the recursion itself; the time taken grows with `count` (0.1 s for some 30 000, once: results are kept). */
function exactQuantile(count: number, level: number): number | undefined {
  const key = `${count} ${level}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  // Pairs that share no reading are independent; the sum of the chances of all pairs is more than any of them.
  const separatePairs = normalQuantile(level ** (1 / Math.floor(count / 2)));
  const allPairs = normalQuantile((2 * (1 - level)) / (count * (count - 1)));
  if (separatePairs === undefined || allPairs === undefined) return undefined;
  const excess = (drop: number) => Math.log(1 - level) - Math.log(chanceOfDrop(count, drop * Math.SQRT2));
  const drop = risingRoot(excess, separatePairs, -allPairs, 1e-7);
  known.set(key, drop);
  return drop;
}

/** With fewer degrees of freedom the integral below would have to begin lower; nobody judges by so few. */
const leastDegrees = 4;
/** More stations than any sweep has; beyond, a bound that costs nothing stands for the integral. */
const mostStations = 64;

/**
 * The same where the standard deviation is itself an estimate with `degreesOfFreedom` (4 and more), independent of
 * the readings' means: the drop in units of that estimate. For 2 readings it is Student's one-sided quantile; for more it is
 * more than the normal one widened by t/z, which a flat curve exceeds in up to 12.7 % of sweeps at 4 degrees of freedom
 * and 12 stations. To 1e-4 up to 64 readings; beyond them a bound on the safe side, Student's quantile at the chance of
 * one pair.
 *
 * Source: derived here, the chance of `flatDropQuantile` averaged over the chi distribution of the estimate.
 */
export function studentFlatDropQuantile(
  count: number,
  degreesOfFreedom: number,
  level = 0.95,
): number | undefined {
  const known = flatDropQuantile(count, level);
  if (known === undefined || !(degreesOfFreedom >= leastDegrees)) return undefined;
  const bound = studentQuantile(normalCdf(known), degreesOfFreedom);
  if (bound === undefined || count > mostStations) return bound;
  const key = `${count} ${level} ${degreesOfFreedom}`;
  const found = knownStudent.get(key);
  if (found !== undefined) return found;
  const deviations = estimatedDeviations(degreesOfFreedom);
  const chance = (drop: number) =>
    deviations.reduce(
      (sum, { ratio, weight }) => sum + weight * Math.min(1, chanceOfDrop(count, drop * ratio * Math.SQRT2)),
      0,
    );
  const excess = (drop: number) => Math.log(1 - level) - Math.log(chance(drop));
  const drop = risingRoot(excess, known, bound * 1.01, 1e-6);
  knownStudent.set(key, drop);
  return drop;
}

const knownStudent = new Map<string, number>();
