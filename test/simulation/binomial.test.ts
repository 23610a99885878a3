// The interval of a counted rate against its definition.
import { describe, expect, test } from "vitest";
import { rateOf } from "../kit/binomial.ts";

/** Chance of so many hits or more, summed term by term. */
function chanceOfAtLeast(hits: number, trials: number, share: number): number {
  let term = (1 - share) ** trials;
  let below = 0;
  for (let count = 0; count < hits; count++) {
    below += term;
    term *= ((trials - count) / (count + 1)) * (share / (1 - share));
  }
  return 1 - below;
}

describe("the exact interval of a rate", () => {
  test.each([
    [3, 20],
    [25, 500],
    [29, 30],
  ])("%d of %d: beyond either end such a count is rarer than 1 in 40", (hits, trials) => {
    const { low, high } = rateOf(hits, trials);
    expect(chanceOfAtLeast(hits, trials, low)).toBeCloseTo(0.025, 7);
    expect(1 - chanceOfAtLeast(hits + 1, trials, high)).toBeCloseTo(0.025, 7);
  });

  test("none and all of them have one end each: 0 of 10 is at most 1 - 0.025^(1/10)", () => {
    expect(rateOf(0, 10)).toMatchObject({ low: 0, high: expect.closeTo(1 - 0.025 ** 0.1, 9) });
    expect(rateOf(10, 10)).toMatchObject({ low: expect.closeTo(0.025 ** 0.1, 9), high: 1 });
  });
});
