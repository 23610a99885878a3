import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { enNumber } from "../../../shared/calc/en-number.ts";
import { checkClose } from "./close.ts";

describe("the normalised difference", () => {
  // NIST/SEMATECH Dataplot reference manual, "En": reference 1, U = 2 · 0.00627847 and 2 · 0.00434613.
  test.each([
    [1.006, 0.393],
    [0.996, -0.262],
    [0.998, -0.131],
    [1, 0],
  ])("of a laboratory's %d is %d as NIST prints it", (value, printed) => {
    const en = enNumber(value, 2 * 0.00434613, 1, 2 * 0.00627847) ?? Number.NaN;
    expect(Math.abs(en - printed)).toBeLessThan(5e-4);
  });

  test("of 251.3 ± 2.5 and 248.0 ± 2.0 is beyond 1 (handbook, section 11)", () => {
    checkClose(enNumber(251.3, 2.5, 248, 2), 1.0307468, 1e-7);
  });

  test("changes its sign when the two are exchanged, and nothing when the unit changes", () => {
    const value = fc.double({ min: -1e3, max: 1e3, noNaN: true });
    const uncertainty = fc.double({ min: 1e-3, max: 1e2, noNaN: true });
    fc.assert(
      fc.property(value, uncertainty, value, uncertainty, (a, u, b, v) => {
        expect(Math.abs((enNumber(a, u, b, v) ?? 1) + (enNumber(b, v, a, u) ?? 1))).toBe(0);
        checkClose(enNumber(1024 * a, 1024 * u, 1024 * b, 1024 * v), enNumber(a, u, b, v) ?? 0, 1e-12);
      }),
    );
  });

  test("is not there without any uncertainty", () => {
    expect(enNumber(1, 0, 2, 0)).toBeUndefined();
  });
});
