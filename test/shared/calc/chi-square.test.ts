import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { chiSquareCdf, chiSquareQuantile, deviationInterval } from "../../../shared/calc/chi-square.ts";
import { checkClose } from "./close.ts";

describe("the chi-square distribution", () => {
  // Printed in every table of the distribution (Abramowitz and Stegun, table 26.8).
  test.each([
    [0.95, 1, 3.84146],
    [0.975, 10, 20.4831],
    [0.025, 10, 3.24697],
    [0.05, 30, 18.4926],
    [0.975, 100, 129.561],
  ])("quantile %d at %d degrees of freedom is %d", (p, nu, printed) => {
    checkClose(chiSquareQuantile(p, nu), printed, 1e-5);
  });

  test.each([1, 2, 3, 7, 14, 32, 150, 900])("agrees with jstat at %d degrees of freedom", (nu) => {
    for (const x of [0.01, 0.3, 1, 5, 20, 60, nu, 1.3 * nu]) {
      expect(chiSquareCdf(x, nu)).toBeCloseTo(jstat.chisquare.cdf(x, nu), 9);
    }
    for (const p of [0.001, 0.025, 0.5, 0.975, 0.999]) {
      checkClose(chiSquareQuantile(p, nu), jstat.chisquare.inv(p, nu), 1e-6);
    }
  });

  test("is the inverse of its own distribution function, whatever the degrees of freedom", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.integer({ min: 1, max: 5000 }),
        (p, nu) => {
          expect(chiSquareCdf(chiSquareQuantile(p, nu) ?? Number.NaN, nu)).toBeCloseTo(p, 9);
        },
      ),
    );
  });

  test("is not asked for what it does not know", () => {
    for (const [p, nu] of [
      [0, 5],
      [1, 5],
      [0.5, 0],
      [0.5, Number.NaN],
      [Number.NaN, 3],
      [0.5, 1e9],
    ] as const) {
      expect(chiSquareQuantile(p, nu)).toBeUndefined();
    }
  });
});

test("the interval of a deviation is that of the normal variance: 0.45 % with 14 degrees of freedom", () => {
  const interval = deviationInterval(0.0045, 14);
  checkClose(interval?.low, 0.0045 * Math.sqrt(14 / jstat.chisquare.inv(0.975, 14)), 1e-6);
  checkClose(interval?.high, 0.0045 * Math.sqrt(14 / jstat.chisquare.inv(0.025, 14)), 1e-6);
});
