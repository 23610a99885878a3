import { describe, expect, test } from "vitest";
import { effectiveSize } from "../../../../shared/calc/trace/effective-size.ts";
import { normalNumbers } from "../../../../shared/calc/trace/noise.ts";
import { steadyWindow } from "../../../../shared/calc/trace/steady-window.ts";
import { rateOf } from "../../../kit/binomial.ts";
import { TARGET, WITHIN } from "../../../kit/traces.ts";

function autoregressive(count: number, correlation: number, seed: number): Float64Array {
  const normal = normalNumbers(seed);
  let before = normal();
  return Float64Array.from({ length: count }, () => {
    before = correlation * before + Math.sqrt(1 - correlation ** 2) * normal();
    return before;
  });
}

describe("the number of values that a mean is worth", () => {
  // n (1 - phi)/(1 + phi) for a first-order autoregression (the sum of the geometric series of its correlations).
  test.each([0, 0.5, 0.8, 0.95])("is that of a first-order autoregression of %d", (correlation) => {
    const count = 20_000;
    const expected = (count * (1 - correlation)) / (1 + correlation);
    const mean =
      [1, 2, 3, 4].reduce((sum, seed) => sum + effectiveSize(autoregressive(count, correlation, seed)), 0) /
      4;
    expect(Math.abs(mean / expected - 1)).toBeLessThan(0.1);
  });

  test("is all of them where they do not differ", () => {
    expect(effectiveSize(new Float64Array(10).fill(3))).toBe(10);
  });
});

describe("the steady window", () => {
  const window = (depression: Float64Array, step = 0.02) => {
    const time = depression.map((_, at) => at * step);
    return steadyWindow({ time, depression }, undefined, 0, depression.length, WITHIN);
  };

  test("begins where a drift has ended", () => {
    const noise = autoregressive(1000, 0.3, 5);
    const found = window(noise.map((value, at) => TARGET - 60 * Math.exp(-at / 300) + 3 * value));
    expect(found?.from).toBeGreaterThan(1);
    expect(found?.to).toBeCloseTo(19.98);
  });

  test("is none where the depression drifts to the end", () => {
    expect(window(autoregressive(1000, 0, 5).map((value, at) => TARGET + at + value))).toBeUndefined();
  });

  test("of samples that are all alike has their value, without scatter", () => {
    const third = TARGET / 3;
    expect(window(new Float64Array(40).fill(third))?.depression).toEqual({
      mean: third,
      scatter: 0,
      effective: 40,
      error: 0,
    });
  });

  test("has a mean whose error is right although its samples hang together", () => {
    let hits = 0;
    const TRIALS = 300;
    for (let seed = 1; seed <= TRIALS; seed++) {
      const found = window(autoregressive(2000, 0.9, 31 * seed).map((value) => TARGET + 5 * value));
      const { mean = 0, error = 0 } = found?.depression ?? {};
      if (Math.abs(mean - TARGET) <= 1.96 * error) hits++;
    }
    const { low, high } = rateOf(hits, TRIALS);
    expect([hits, low <= 0.95 && high >= 0.9]).toEqual([hits, true]);
  });
});
