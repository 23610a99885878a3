import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalQuantile } from "../../../shared/calc/normal.ts";
import { rangeQuantile } from "../../../shared/calc/range-of-normals.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

describe("range of normal values", () => {
  test("has the 95 % points of the studentized range at infinite degrees of freedom (standard tables)", () => {
    const table = [2.77, 3.31, 3.63, 3.86, 4.03, 4.17, 4.29, 4.39, 4.47];
    table.forEach((expected, index) => {
      expect(Math.abs((rangeQuantile(index + 2) ?? 0) - expected)).toBeLessThanOrEqual(0.005);
    });
  });

  test.each([
    [2, 2.771807648699355],
    [3, 3.314493155398122],
    [10, 4.474124221725907],
    [100, 6.084637537173171],
  ])("of %d values is %d (0.95; scipy, studentized_range)", (count, expected) => {
    checkClose(rangeQuantile(count), expected, 1e-8);
  });

  test("of two values is root two times the two-sided normal point at any level", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 0.999, noNaN: true }), (level) => {
        checkClose(rangeQuantile(2, level), Math.SQRT2 * (normalQuantile((1 + level) / 2) ?? 0), 1e-7);
      }),
    );
  });

  test("stays within its 95 % point in 95 % of simulated sets of five", () => {
    const normals = seededNormals(5);
    const limit = rangeQuantile(5) ?? 0;
    let within = 0;
    for (let set = 0; set < 20_000; set += 1) {
      const values = Array.from({ length: 5 }, () => normals.next().value);
      if (Math.max(...values) - Math.min(...values) <= limit) within += 1;
    }
    expect(Math.abs(within / 20_000 - 0.95)).toBeLessThan(0.0062);
  });

  test("grows with the number of values and with level", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 2000 }), fc.constantFrom(0.9, 0.95, 0.99), (count, level) => {
        const range = rangeQuantile(count, level) ?? 0;
        expect(rangeQuantile(count + 1, level)).toBeGreaterThan(range);
        expect(rangeQuantile(count, level + 0.005)).toBeGreaterThan(range);
      }),
      { numRuns: 40 },
    );
  });

  test("is not computed for fewer than two values, parts of one, or a level out of range", () => {
    expect(rangeQuantile(1)).toBeUndefined();
    expect(rangeQuantile(2.5)).toBeUndefined();
    expect(rangeQuantile(5, 1)).toBeUndefined();
    expect(rangeQuantile(5, 0.1)).toBeUndefined();
  });
});
