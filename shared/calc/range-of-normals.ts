// Repeats of one point disagree only when their range is more than that many readings have by chance.

import { normalCdf, normalPdf, normalQuantile } from "./normal.ts";
import { risingRoot } from "./rising-root.ts";

const step = 0.125;

/** Where the integral is taken, with density and chance of a standard normal there. */
function integralNodes() {
  return Array.from({ length: 137 }, (_, index) => {
    const at = -8.5 + index * step;
    return { at, density: normalPdf(at), chance: normalCdf(at) };
  });
}

type Nodes = ReturnType<typeof integralNodes>;

/** Chance that the range of `count` standard normals is at most `range`: n times the integral over the least. */
function chanceWithin(nodes: Nodes, count: number, range: number): number {
  let sum = 0;
  for (const { at, density, chance } of nodes)
    sum += density * (normalCdf(at + range) - chance) ** (count - 1);
  return count * step * sum;
}

const known = new Map<string, number>();

/**
 * Range (largest less least) that `count` independent normal values of standard deviation 1 do not exceed with
 * chance `level`: 2.772, 3.314, 3.633 for 2, 3, 4 values at 95 %. To 1e-6.
 * `undefined` for a count that is not a whole number from 2 up, and a level outside 0.5 to 0.9999.
 *
 * Source: the distribution of the range, H. O. Hartley, Biometrika 32 (1942) 334-348; it is the studentized
 * range with infinite degrees of freedom.
 */
export function rangeQuantile(count: number, level = 0.95): number | undefined {
  if (!(Number.isInteger(count) && count >= 2 && level >= 0.5 && level <= 0.9999)) return undefined;
  const key = `${count} ${level}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  // Two values alone range less; the sum of the chances of all pairs is more than that of any of them.
  const twoValues = normalQuantile((1 - level) / 2);
  const allPairs = normalQuantile((1 - level) / (count * (count - 1)));
  if (twoValues === undefined || allPairs === undefined) return undefined;
  const nodes = integralNodes();
  const excess = (range: number) => Math.log(1 - level) - Math.log1p(-chanceWithin(nodes, count, range));
  const range = risingRoot(excess, -Math.SQRT2 * twoValues, -Math.SQRT2 * allPairs, 1e-9);
  known.set(key, range);
  return range;
}
