import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pooledDeviation, pooledRelativeDeviation } from "../../../shared/calc/pooled-deviation.ts";
import { checkClose } from "./close.ts";

const threeBenches = [
  [249.8, 250.4, 250.1, 249.9],
  [251.9, 252.3, 251.6, 252.0],
  [248.7, 249.3, 249.0, 248.6],
];

const cell = fc.array(fc.double({ min: 50, max: 300, noNaN: true }), { minLength: 2, maxLength: 6 });
const cells = fc.array(cell, { minLength: 1, maxLength: 8 });

describe("pooled deviation", () => {
  test("of three benches is 0.29059326 (ISO 5725-2; numpy, scipy and jstat)", () => {
    const pooled = pooledDeviation(threeBenches);
    checkClose(pooled?.deviation, 0.29059326, 1e-7);
    expect(pooled?.degreesOfFreedom).toBe(9);
  });

  test("relative to nearly equal means is that over their mean", () => {
    checkClose(pooledRelativeDeviation(threeBenches)?.deviation, 0.29059326 / 250.3, 3e-3);
  });

  test("weights cells with their degrees of freedom, by hand: sqrt((2 + 8) / 3)", () => {
    const pooled = pooledDeviation([
      [1, 2, 3],
      [5, 9],
    ]);
    checkClose(pooled?.deviation, Math.sqrt(10 / 3), 1e-15);
    expect(pooled?.degreesOfFreedom).toBe(3);
  });

  test("relative to the mean does not depend on the unit, nor on a scale of each cell's own", () => {
    fc.assert(
      fc.property(cells, fc.double({ min: 0.1, max: 10, noNaN: true }), (values, factor) => {
        const plain = pooledRelativeDeviation(values);
        const scaled = values.map((readings, index) => readings.map((value) => value * factor * (index + 1)));
        const other = pooledRelativeDeviation(scaled);
        expect(other?.degreesOfFreedom).toBe(plain?.degreesOfFreedom);
        expect(Math.abs((other?.deviation ?? 0) - (plain?.deviation ?? 1))).toBeLessThan(1e-12);
      }),
    );
  });

  test("absolute does not depend on where each cell lies", () => {
    fc.assert(
      fc.property(cells, (values) => {
        const moved = values.map((readings, index) => readings.map((value) => value + 100 * index));
        const [a, b] = [pooledDeviation(values)?.deviation ?? 0, pooledDeviation(moved)?.deviation ?? 1];
        expect(Math.abs(a - b)).toBeLessThan(1e-9);
      }),
    );
  });

  test("takes nothing from a single reading, and relative nothing from a mean that is not positive", () => {
    expect(pooledDeviation([...threeBenches, [1000]])).toEqual(pooledDeviation(threeBenches));
    expect(pooledRelativeDeviation([...threeBenches, [-1, 1], [-5, -6], []])).toEqual(
      pooledRelativeDeviation(threeBenches),
    );
  });

  test("is not computed where nothing was repeated", () => {
    expect(pooledDeviation([])).toBeUndefined();
    expect(pooledDeviation([[1], [2]])).toBeUndefined();
    expect(pooledRelativeDeviation([[0, 0]])).toBeUndefined();
  });
});
