// Numbers are printed with the digits they deserve and the same way everywhere.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimalsFor, formatFixed } from "../../../shared/quantity/digits.ts";

describe("decimals for an uncertainty", () => {
  test.each([
    [2.3, 1],
    [0.35, 2],
    [23, 0],
    [230, 0],
    [1, 1],
    [9.94, 1],
    [9.96, 0],
    [0.0994, 3],
    [0.0996, 2],
    [1e-9, 6],
    [1e300, 0],
    [Number.MIN_VALUE, 6],
  ])("%d gives %i", (uncertainty, decimals) => {
    expect(decimalsFor(uncertainty)).toBe(decimals);
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("%d gives none", (uncertainty) => {
    expect(decimalsFor(uncertainty)).toBeUndefined();
  });

  test("leave the uncertainty two significant digits between 0.00001 and 10 (JCGM 100:2008, 7.2.6)", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 9.9, noNaN: true }), (uncertainty) => {
        const text = formatFixed(uncertainty, decimalsFor(uncertainty) ?? 0);
        expect(text.replace(/^[0.]+/, "").replace(".", "")).toMatch(/^\d{2}$/);
      }),
    );
  });
});

describe("a number with fixed decimals", () => {
  test.each([
    [228.04, 1, "228.0"],
    [0.4, 3, "0.400"],
    [-3.25, 1, "-3.3"],
    [-0.04, 1, "0.0"],
    [-0, 0, "0"],
    [-0.4, 0, "0"],
    [1e21, 0, "1000000000000000000000"],
    [-1e22, 2, "-10000000000000000000000.00"],
    [Number.NaN, 2, "-"],
    [Number.POSITIVE_INFINITY, 0, "-"],
    [Number.NEGATIVE_INFINITY, 0, "-"],
  ])("%d with %i is printed as %s", (value, decimals, text) => {
    expect(formatFixed(value, decimals)).toBe(text);
  });

  test("has no exponent, no sign on zero, and lies within half a step of its value", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(6), (value, decimals) => {
        const text = formatFixed(value, decimals);
        expect(text).toMatch(decimals === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${decimals}}$`));
        expect(text).not.toMatch(/^-[0.]+$/);
        const error = Math.abs(Number(text) - value);
        expect(error).toBeLessThanOrEqual(0.5 / 10 ** decimals + Math.abs(value) * Number.EPSILON);
      }),
    );
  });
});
