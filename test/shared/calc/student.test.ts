import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { normalQuantile } from "../../../shared/calc/normal.ts";
import { studentQuantile } from "../../../shared/calc/student.ts";
import { checkClose } from "./close.ts";

const chance = fc.double({ min: 0.51, max: 0.9999, noNaN: true });
const freedom = fc.double({ min: 1, max: 20_000, noNaN: true });

/** Integral from 0 by Simpson's rule; cubing the steps makes it hold for a small power at 0. */
function integrate(f: (x: number) => number, to: number): number {
  const intervals = 4000;
  let sum = 0;
  for (let step = 1; step <= intervals; step += 1) {
    const u = step / intervals;
    const weight = step === intervals ? 1 : step % 2 === 1 ? 4 : 2;
    sum += weight * f(to * u ** 3) * 3 * u ** 2;
  }
  return (sum * to) / (3 * intervals);
}

describe("quantile of Student's t", () => {
  test.each([
    [1, 12.706205],
    [2, 4.302653],
    [4, 2.776445],
    [5, 2.570582],
    [8, 2.306004],
    [10, 2.228139],
    [16, 2.119905],
    [20, 2.085963],
    [30, 2.042272],
    [Infinity, 1.959964],
  ])("for 0.975 at %d degrees of freedom is %d (scipy and jstat)", (nu, expected) => {
    checkClose(studentQuantile(0.975, nu), expected, 3e-7);
  });

  test("at 99.5 % and 16 degrees of freedom is 2.92 (GUM H.1, printed; 2.9207816 scipy)", () => {
    checkClose(studentQuantile(0.995, 16), 2.9207816, 1e-8);
  });

  test("takes degrees of freedom that are not whole (2.3070336 at 7.97954291, scipy)", () => {
    checkClose(studentQuantile(0.975, 7.97954291), 2.307033583397291, 1e-12);
    checkClose(studentQuantile(0.995, 1.5), 17.820310514462804, 1e-12);
    checkClose(studentQuantile(0.55, 1000), 0.12569326251871638, 1e-11);
  });

  test("does not step where the method changes (scipy at 9999 and 10000)", () => {
    checkClose(studentQuantile(0.975, 9999), 1.960201263621357, 1e-12);
    checkClose(studentQuantile(0.975, 10000), 1.960201239890626, 1e-12);
  });

  test("agrees with jstat to the accuracy of that (its beta function stops at 3e-7)", () => {
    fc.assert(
      fc.property(chance, fc.double({ min: 1, max: 500, noNaN: true }), (p, nu) => {
        checkClose(studentQuantile(p, nu), jstat.studentt.inv(p, nu), 1e-6);
      }),
    );
  });

  test("holds its share of the density's integral (Simpson's rule)", () => {
    fc.assert(
      fc.property(chance, fc.double({ min: 1, max: 100, noNaN: true }), (p, nu) => {
        const angle = Math.atan((studentQuantile(p, nu) ?? 0) / Math.sqrt(nu));
        // With t = sqrt(nu) tan(angle) the density is that of a power of the cosine.
        const below = integrate((theta) => Math.cos(theta) ** (nu - 1), angle);
        const beyond = integrate((theta) => Math.sin(theta) ** (nu - 1), Math.PI / 2 - angle);
        expect(Math.abs(below / (below + beyond) - (2 * p - 1))).toBeLessThan(1e-9);
      }),
    );
  });

  test("has the closed forms at 1 and 2 degrees of freedom", () => {
    fc.assert(
      fc.property(chance, (p) => {
        checkClose(studentQuantile(p, 1), Math.tan(Math.PI * (p - 0.5)), 1e-10);
        checkClose(studentQuantile(p, 2), (2 * p - 1) / Math.sqrt(2 * p * (1 - p)), 1e-10);
      }),
    );
  });

  test("is odd about one half, rises with chance and falls towards the normal quantile", () => {
    fc.assert(
      fc.property(chance, freedom, (p, nu) => {
        const t = studentQuantile(p, nu) ?? 0;
        checkClose(studentQuantile(1 - p, nu), -t, 1e-9);
        expect(studentQuantile(p + 5e-5, nu)).toBeGreaterThan(t);
        expect(studentQuantile(p, nu * 1.1)).toBeLessThan(t);
        expect(normalQuantile(p)).toBeLessThan(t);
      }),
    );
  });

  test("is zero at one half and nothing outside its ranges", () => {
    expect(studentQuantile(0.5, 3)).toBe(0);
    expect(studentQuantile(0, 3)).toBeUndefined();
    expect(studentQuantile(1, 3)).toBeUndefined();
    expect(studentQuantile(0.975, 0.9)).toBeUndefined();
    expect(studentQuantile(0.975, Number.NaN)).toBeUndefined();
  });
});
