// Quantiles without a closed form are found as the root of a function that only rises.

/**
 * Where a continuous rising function passes zero between `low` and `high`, to a relative `tolerance`. A function
 * that has no zero there gives the end nearest to one.
 * Source: the Illinois variant of regula falsi, M. Dowell and P. Jarratt, BIT 11 (1971) 168-174.
 */
export function risingRoot(
  rise: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let [left, right] = [low, high];
  let [atLeft, atRight] = [rise(left), rise(right)];
  if (atLeft >= 0) return left;
  if (atRight <= 0) return right;
  let estimate = left;
  for (let step = 0; step < 200; step += 1) {
    const previous = estimate;
    const falsi = right - (atRight * (right - left)) / (atRight - atLeft);
    estimate = falsi > left && falsi < right ? falsi : (left + right) / 2;
    const scale = tolerance * Math.abs(estimate);
    if (Math.abs(estimate - previous) <= scale || right - left <= scale) break;
    const value = rise(estimate);
    if (value === 0) break;
    if (value < 0) {
      if (previous === left) atRight /= 2;
      [left, atLeft] = [estimate, value];
    } else {
      if (previous === right) atLeft /= 2;
      [right, atRight] = [estimate, value];
    }
  }
  return estimate;
}
