import { expect, test } from "vitest";
import { leastSquares } from "../../../shared/calc/least-squares.ts";
import { checkClose } from "./close.ts";

const FREE = { low: [-1e9, -1e9], high: [1e9, 1e9] };

/** NIST Statistical Reference Datasets, nonlinear regression, Misra1a: y = b1 (1 - exp(-b2 x)). */
const X = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
const Y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
const misra = ([b1 = 0, b2 = 0]: readonly number[]) => Float64Array.from(X, (x) => -b1 * Math.expm1(-b2 * x));

test.each([
  [500, 0.0001],
  [250, 0.0005],
])("NIST Misra1a from its start at %d and %d", (b1, b2) => {
  const found = leastSquares(misra, Float64Array.from(Y), [b1, b2], FREE);
  // Certified values and standard deviations of the estimates.
  checkClose(found?.parameters[0], 238.94212918, 1e-7);
  checkClose(found?.parameters[1], 5.5015643181e-4, 1e-7);
  checkClose(found?.errors[0], 2.7070075241, 1e-5);
  checkClose(found?.errors[1], 7.2668688436e-6, 1e-5);
  checkClose(found?.sum, 0.12455138894, 1e-8);
});

test("parameters stay inside their bounds", () => {
  const found = leastSquares(misra, Float64Array.from(Y), [200, 0.0005], { low: [0, 0], high: [230, 1] });
  expect(found?.parameters[0]).toBeLessThanOrEqual(230);
});

test("what the data do not tell has no finite error, and too few data no fit", () => {
  const flat = ([a = 0]: readonly number[]) => Float64Array.from([a, a, a, a]);
  const found = leastSquares(flat, Float64Array.from([1, 2, 3, 2]), [0, 5], FREE);
  checkClose(found?.parameters[0], 2, 1e-9);
  expect(found?.errors[1]).toBe(Number.POSITIVE_INFINITY);
  expect(leastSquares(flat, Float64Array.from([1, 2]), [0, 5], FREE)).toBeUndefined();
});
