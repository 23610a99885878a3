import { describe, expect, test } from "vitest";
import { endOfHold, settling } from "../../../../shared/calc/trace/settling.ts";
import { makeTrace, TARGET, WITHIN } from "../../../kit/traces.ts";

const silent = () => 0;

/** The settle time of a noiseless approach, in samples of `step` s. */
function settled(made: object, step: number, within: number): number {
  const { samples } = makeTrace({ count: Math.ceil(60 / step), step, ...made }, silent);
  return settling(samples, samples.time.length, TARGET, within)?.time ?? Number.NaN;
}

describe("the settle time of", () => {
  // Handbook section 12: t = tau ln(S/delta); one sample may be added by the definition.
  test.each([
    ["0 to 28 within 0.2 inH2O", WITHIN, 4.9416424],
    ["2 %", 0.02 * TARGET, 3.912023],
    ["1 %", 0.01 * TARGET, 4.6051702],
  ])("a first-order approach, %s", (_, within, taus) => {
    const step = 0.001;
    const time = settled({ timeConstant: 0.8 }, step, within);
    expect(time).toBeGreaterThanOrEqual(0.8 * taus);
    expect(time - 0.8 * taus).toBeLessThanOrEqual(step * (1 + 1e-6));
  });

  // Handbook section 12: wn ts of the second order, by an exact search.
  test.each([
    [0.3, 0.02, 11.2301],
    [0.5, 0.02, 8.0764],
    [0.7, 0.02, 5.9788],
    [0.8, 0.02, 3.7559],
    [1, 0.02, 5.8339],
    [1.5, 0.02, 10.6547],
    [0.3, 0.05, 10.1371],
    [0.5, 0.05, 5.2891],
    [0.7, 0.05, 2.8998],
    [1, 0.05, 4.7439],
    [1.5, 0.05, 8.2558],
    [0.3, 0.2 / 28, 16.5254],
    [0.5, 0.2 / 28, 8.994],
    [0.8, 0.2 / 28, 6.8153],
    [1.5, 0.2 / 28, 13.3503],
  ])("a second-order approach of damping %d within %d", (damping, within, expected) => {
    const step = 0.0005;
    const time = settled({ naturalFrequency: 1, damping }, step, within * TARGET);
    expect(Math.abs(time - expected)).toBeLessThan(2 * step);
  });
});

describe("a trace", () => {
  const samples = (...inches: readonly number[]) => ({
    time: Float64Array.from(inches, (_, at) => at / 10),
    depression: Float64Array.from(inches, (value) => value * 249.08891),
  });

  test("that enters the band and leaves it again has settled when it comes back", () => {
    const { time, depression } = samples(0, 20, 28, 28.5, 28.2, 28.1, 28);
    expect(settling({ time, depression }, 7, TARGET, WITHIN)).toEqual({
      time: 0.4,
      step: expect.closeTo(0.1),
    });
  });

  test("that never stays has not settled", () => {
    expect(settling(samples(0, 20, 28, 27, 28, 27), 6, TARGET, WITHIN)).toBeUndefined();
  });

  test("that holds from its first sample has settled then", () => {
    expect(settling(samples(28, 28, 28), 3, TARGET, WITHIN)).toEqual({ time: 0, step: 0 });
  });

  test("that is let down at its end holds up to there", () => {
    const down = samples(0, 20, 28, 28, 28, 20, 9, 0);
    expect(endOfHold(down, TARGET, WITHIN)).toBe(5);
    expect(settling(down, 5, TARGET, WITHIN)?.time).toBeCloseTo(0.2);
    expect(endOfHold(samples(0, 20, 28, 28, 27), TARGET, WITHIN)).toBe(5);
  });
});
