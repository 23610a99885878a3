// Chance alone makes a flat curve fall back somewhere, the more stations the further: this says how far.

import { normalCdf, normalPdf, normalQuantile } from "./normal.ts";
import { risingRoot } from "./rising-root.ts";

const step = 0.125;
const lowest = -7;
const nodeCount = 121;
const nodes = Array.from({ length: nodeCount }, (_, index) => lowest + index * step);
const chanceAtNode = Float64Array.from(nodes, normalCdf);
const densityAtNode = Float64Array.from(nodes, normalPdf);

/**
 * Chance that no later of `count` independent standard normals lies more than `threshold` below an earlier one.
 *
 * `density` is that of the running maximum without such a drop. The next value either stays between maximum less
 * threshold and maximum, or becomes the maximum itself: f(m) [Phi(m) - Phi(m - c)] + phi(m) F(m). F is the
 * integral of the cubic through four nodes.
 */
function chanceWithoutDrop(count: number, threshold: number): number {
  const stay = chanceAtNode.map((chance, index) => chance - normalCdf(lowest + index * step - threshold));
  const density = new Float64Array(nodeCount + 1);
  density.set(densityAtNode);
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
      density[index] = here * (stay[index] ?? 0) + (densityAtNode[index] ?? 0) * below;
    }
  }
  return step * density.reduce((sum, value) => sum + value, 0);
}

const known = new Map<string, number>();

/**
 * Largest drop that `count` readings of a flat curve, taken in order, do not exceed with chance `level`, in units
 * of the standard uncertainty of one difference: 1.645, 2.081, 2.329 for 2, 3, 4 readings at 95 %. To 1e-5.
 *
 * The drop is that of any later reading below any earlier one; the readings are independent and normal with one
 * standard deviation s, and the unit is s times the root of 2. A curve that truly rises drops less. The time
 * taken grows with `count` (0.1 s for some 30 000, once: results are kept). `undefined` for a count that is not
 * a whole number from 2 up, and a level outside 0.5 to 0.9999.
 *
 * Source: derived here by recursion on the running maximum; for 2 readings it is the one-sided normal quantile.
 */
export function flatDropQuantile(count: number, level = 0.95): number | undefined {
  if (!(Number.isInteger(count) && count >= 2 && level >= 0.5 && level <= 0.9999)) return undefined;
  const key = `${count} ${level}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  // Pairs that share no reading are independent; the sum of the chances of all pairs is more than any of them.
  const separatePairs = normalQuantile(level ** (1 / Math.floor(count / 2)));
  const allPairs = normalQuantile((2 * (1 - level)) / (count * (count - 1)));
  if (separatePairs === undefined || allPairs === undefined) return undefined;
  const excess = (drop: number) =>
    Math.log(1 - level) - Math.log1p(-chanceWithoutDrop(count, drop * Math.SQRT2));
  const drop = risingRoot(excess, separatePairs, -allPairs, 1e-7);
  known.set(key, drop);
  return drop;
}
