import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { normalCdf, normalPdf, normalQuantile } from "../../../shared/calc/normal.ts";
import { checkClose } from "./close.ts";

const value = fc.double({ min: -8, max: 8, noNaN: true });

describe("normal distribution", () => {
  test.each([
    [-7.2, 3.01062798111742e-13],
    [-5, 2.866515718791939e-7],
    [-3, 0.001349898031630095],
    [-1, 0.15865525393145707],
    [0, 0.5],
    [0.3, 0.6179114221889526],
    [2, 0.9772498680518208],
  ])("up to %d holds %d (computed with scipy)", (x, expected) => {
    checkClose(normalCdf(x), expected, 1e-8);
    expect(Math.abs(normalCdf(x) - expected)).toBeLessThan(1e-14);
  });

  test.each([
    [1e-20, -9.26234008979841],
    [0.001, -3.090232306167813],
    [0.05, -1.6448536269514729],
    [0.3, -0.5244005127080407],
    [0.975, 1.959963984540054],
  ])("quantile of %d is %d (computed with scipy)", (p, expected) => {
    checkClose(normalQuantile(p), expected, 1e-14);
  });

  test("agrees with jstat", () => {
    fc.assert(
      fc.property(value, (x) => {
        expect(Math.abs(normalCdf(x) - jstat.normal.cdf(x, 0, 1))).toBeLessThan(1e-12);
        checkClose(normalPdf(x), jstat.normal.pdf(x, 0, 1), 1e-12);
      }),
    );
  });

  test("is symmetric and never falls", () => {
    fc.assert(
      fc.property(value, value, (a, b) => {
        expect(Math.abs(normalCdf(a) + normalCdf(-a) - 1)).toBeLessThan(1e-15);
        expect(normalCdf(Math.max(a, b))).toBeGreaterThanOrEqual(normalCdf(Math.min(a, b)) - 1e-15);
      }),
    );
  });

  test("has its quantile as inverse", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.999999, noNaN: true }), (p) => {
        checkClose(normalCdf(normalQuantile(p) ?? 0), p, 1e-9);
      }),
    );
  });

  test("has the density that its chance grows with", () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (x) => {
        const slope = (normalCdf(x + 1e-4) - normalCdf(x - 1e-4)) / 2e-4;
        expect(Math.abs(slope - normalPdf(x))).toBeLessThan(1e-8);
      }),
    );
  });

  test("ends at infinity and has no quantile outside 0 to 1", () => {
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(-0.1)).toBeUndefined();
    expect(normalQuantile(1.1)).toBeUndefined();
    expect(normalQuantile(Number.NaN)).toBeUndefined();
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
  });
});
