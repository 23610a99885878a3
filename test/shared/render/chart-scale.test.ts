import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartScale, clamped, fromPixels, tickText, toPixels } from "../../../shared/render/chart-scale.ts";

const value = fc.double({ min: -1e9, max: 1e9, noNaN: true });

function checkTicks(values: readonly number[], count: number, round: boolean, texts: readonly string[]) {
  const scale = chartScale(values, count, round);
  expect(scale.ticks.map((tick) => tickText(scale, tick))).toEqual(texts);
}

describe("chartScale", () => {
  test("has ticks at 1, 2 and 5 times a power of ten", () => {
    checkTicks([0, 246], 6, true, ["0", "50", "100", "150", "200", "250"]);
    checkTicks([0, 0.6], 7, false, ["0.0", "0.1", "0.2", "0.3", "0.4", "0.5", "0.6"]);
    checkTicks([0.36, 0.69], 3, true, ["0.3", "0.4", "0.5", "0.6", "0.7"]);
    checkTicks([0, 3e8], 3, true, ["0.0e+0", "1.0e+8", "2.0e+8", "3.0e+8"]);
  });

  test("without values runs from 0 to 1; about a single one it leaves room", () => {
    expect(chartScale([], 5, true)).toMatchObject({ low: 0, high: 1 });
    expect(chartScale([Number.NaN, Number.POSITIVE_INFINITY], 5, true)).toMatchObject({ low: 0, high: 1 });
    const { low, high } = chartScale([10], 5, false);
    expect([low, high]).toEqual([9, 11]);
  });

  test("holds its values and its ticks", () => {
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1 }),
        fc.integer({ min: 1, max: 12 }),
        fc.boolean(),
        (all, count, round) => {
          const scale = chartScale(all, count, round);
          expect(scale.low).toBeLessThan(scale.high);
          for (const entry of all) expect(clamped(scale, entry)).toBe(entry);
          for (const tick of scale.ticks)
            expect(Math.abs(clamped(scale, tick) - tick)).toBeLessThanOrEqual(
              1e-5 * (scale.high - scale.low),
            );
          expect(scale.ticks.length).toBeLessThanOrEqual(2 * count + 3);
        },
      ),
    );
  });

  test("pixels lead to values and back", () => {
    fc.assert(
      fc.property(value, value, fc.double({ min: -500, max: 1500, noNaN: true }), (a, b, pixels) => {
        const scale = chartScale([a, b], 5, true);
        expect(toPixels(scale, 700, fromPixels(scale, 700, pixels))).toBeCloseTo(pixels, 3);
      }),
    );
  });
});
