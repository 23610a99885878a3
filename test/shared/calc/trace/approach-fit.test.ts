import { describe, expect, test } from "vitest";
import { approachFit } from "../../../../shared/calc/trace/approach-fit.ts";
import { normalNumbers } from "../../../../shared/calc/trace/noise.ts";
import { secondOrder } from "../../../../shared/calc/trace/step-response.ts";
import type { Fitted } from "../../../../shared/model/trace-result.ts";
import { rateOf } from "../../../kit/binomial.ts";
import { type MadeTrace, makeTrace } from "../../../kit/traces.ts";
import { checkClose } from "../close.ts";

const FIRST: MadeTrace = { count: 150, step: 0.02, deadTime: 0.25, timeConstant: 0.4, noise: 15 };
const SECOND: MadeTrace = {
  count: 200,
  step: 0.02,
  deadTime: 0.25,
  naturalFrequency: 6,
  damping: 0.55,
  noise: 15,
};

const fitOf = (made: MadeTrace, seed: number) => {
  const { time, depression } = makeTrace(made, normalNumbers(seed)).samples;
  return approachFit(time, depression);
};

describe("a fit of a noiseless approach gives what it was made of", () => {
  test("first order", () => {
    const fit = fitOf({ ...FIRST, noise: 0 }, 1);
    checkClose(fit?.deadTime.value, 0.25, 1e-4);
    checkClose((fit?.timeConstant ?? fit?.deadTime)?.value, 0.4, 1e-4);
  });

  test.each([0.3, 0.7, 1.6])("second order, damping %d", (damping) => {
    const fit = fitOf({ ...SECOND, noise: 0, damping }, 1);
    expect(fit?.order).toBe(2);
    checkClose(fit?.naturalFrequency?.value, 6, 1e-3);
    checkClose(fit?.damping?.value, damping, 1e-3);
  });
});

test("the second order is that of its differential equation", () => {
  // y'' + 2 zeta wn y' + wn^2 y = wn^2, by differences of the solution itself.
  for (const damping of [0.3, 0.999, 1, 1.001, 2.5]) {
    const y = (t: number) => secondOrder(t, 3, damping);
    for (const t of [0.1, 0.5, 1.2]) {
      const h = 1e-4;
      const first = (y(t + h) - y(t - h)) / (2 * h);
      const second = (y(t + h) - 2 * y(t) + y(t - h)) / h ** 2;
      expect(second + 2 * damping * 3 * first + 9 * y(t)).toBeCloseTo(9, 4);
    }
  }
});

describe("standard errors are what they say: 95 % of fits lie within 1.96 of them", () => {
  const TRIALS = 200;
  type Fit = NonNullable<ReturnType<typeof fitOf>>;

  /** For each number read of the fits: whether as many hold the true value as 95 % of so many may. */
  function checkCover(
    made: MadeTrace,
    order: 1 | 2,
    truths: readonly (readonly [(fit: Fit) => Fitted | undefined, number])[],
  ) {
    const fits = Array.from({ length: TRIALS }, (_, seed) => fitOf(made, seed + 1)).filter(
      (fit): fit is Fit => fit?.order === order,
    );
    expect(fits.length).toBeGreaterThan(0.8 * TRIALS);
    for (const [read, truth] of truths) {
      const hits = fits.filter((fit) => {
        const { value, error } = read(fit) ?? { value: Number.NaN, error: 0 };
        return Math.abs(value - truth) <= 1.96 * error;
      }).length;
      const { low, high } = rateOf(hits, fits.length);
      expect([hits, fits.length, low <= 0.95 && high >= 0.93]).toEqual([hits, fits.length, true]);
    }
  }

  test("of the first order: time constant and dead time", { timeout: 60_000 }, () => {
    checkCover(FIRST, 1, [
      [(fit) => fit.timeConstant, 0.4],
      [(fit) => fit.deadTime, 0.25],
    ]);
  });

  test("of the second order: natural frequency and damping", { timeout: 60_000 }, () => {
    checkCover(SECOND, 2, [
      [(fit) => fit.naturalFrequency, 6],
      [(fit) => fit.damping, 0.55],
    ]);
  });
});

test("a depression that does not rise, and one of few samples, has no approach", () => {
  expect(
    approachFit(
      Float64Array.from({ length: 20 }, (_, at) => at),
      new Float64Array(20),
    ),
  ).toBeUndefined();
  expect(approachFit(Float64Array.from([0, 1]), Float64Array.from([0, 28]))).toBeUndefined();
});
