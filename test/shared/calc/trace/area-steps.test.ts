import { describe, expect, test } from "vitest";
import { areaSteps } from "../../../../shared/calc/trace/area-steps.ts";
import { mostLikelyStep } from "../../../../shared/calc/trace/most-likely-step.ts";
import { normalNumbers } from "../../../../shared/calc/trace/noise.ts";
import { rateOf } from "../../../kit/binomial.ts";
import { type MadeTrace, makeTrace, TARGET, WITHIN } from "../../../kit/traces.ts";

const QUICK: MadeTrace = {
  count: 300,
  step: 0.02,
  deadTime: 0.1,
  timeConstant: 0.8,
  noise: 10,
  flowNoise: 0.003,
};

const stepsOf = (made: MadeTrace, seed: number) => {
  const { samples, flow } = makeTrace(made, normalNumbers(seed));
  return areaSteps(samples, flow, TARGET, WITHIN);
};

describe("a step is found where there is none in at most 5 % of traces with noise that is", () => {
  const TRIALS = 120;
  test.each([
    ["white", QUICK],
    ["correlated by a half", { ...QUICK, correlation: 0.5 }],
    ["correlated by 0.8", { ...QUICK, correlation: 0.8 }],
    ["correlated by 0.95", { ...QUICK, correlation: 0.95 }],
    ["correlated by 0.6, of fifty samples", { ...QUICK, count: 50, step: 0.12, correlation: 0.6 }],
    ["correlated by 0.9, of a hundred samples", { ...QUICK, count: 100, step: 0.06, correlation: 0.9 }],
    [
      "white, on a bench that overshoots",
      { ...QUICK, timeConstant: undefined, naturalFrequency: 2.5, damping: 0.6 },
    ],
    ["white, behind a meter that lags", { ...QUICK, timeConstant: 2, meterLag: 0.1, count: 500 }],
  ] as readonly (readonly [string, MadeTrace])[])("%s", { timeout: 60_000 }, (_, made) => {
    let alarms = 0;
    for (let seed = 1; seed <= TRIALS; seed++) if (stepsOf(made, 7919 * seed).length > 0) alarms++;
    // What was counted must be what a rate of 5 % or less gives.
    const { low } = rateOf(alarms, TRIALS);
    expect(low).toBeLessThanOrEqual(0.05);
  });
});

test("the test behind it marks white noise around a line in 5 % at most, and every clear step in it", {
  timeout: 60_000,
}, () => {
  const TRIALS = 400;
  let alarms = 0;
  for (let seed = 1; seed <= TRIALS; seed++) {
    const normal = normalNumbers(104729 * seed);
    const values = Float64Array.from({ length: 120 }, (_, at) => 0.01 * at + normal());
    const smooth = [values.map(() => 1), values.map((_, at) => at)];
    const scatter = values.map(() => 1);
    if (mostLikelyStep({ values, smooth, scatter }, 0.05) !== undefined) alarms++;
    const stepped = values.map((value, at) => value + (at < 70 ? 0 : 4));
    const found = mostLikelyStep({ values: stepped, smooth, scatter }, 0.05);
    expect(Math.abs((found?.index ?? 0) - 70)).toBeLessThanOrEqual(2);
    expect(Math.abs((found?.size ?? 0) - 4)).toBeLessThan(5 * (found?.error ?? 0));
  }
  expect(rateOf(alarms, TRIALS).low).toBeLessThanOrEqual(0.05);
});

describe("a port that lets go", () => {
  test.each([
    [0.06, 1.6],
    [0.03, 3.1],
    [0.015, 4],
  ])("by %d at %d s is found there, as large as it is", (drop, at) => {
    const [step, ...others] = stepsOf({ ...QUICK, drop, at }, 3);
    expect(others).toEqual([]);
    expect(step?.kind).toBe("let-go");
    expect(Math.abs((step?.time ?? 0) - at)).toBeLessThan(0.11);
    expect(Math.abs((step?.size ?? 0) - drop)).toBeLessThan(4 * (step?.error ?? 0));
    expect(step?.chance).toBeLessThan(0.05);
  });

  test("while the depression rises, and while it holds, says which", () => {
    expect(stepsOf({ ...QUICK, drop: 0.06, at: 1.3 }, 5)[0]?.phase).toBe("rising");
    expect(stepsOf({ ...QUICK, drop: 0.06, at: 5 }, 5)[0]?.phase).toBe("holding");
  });

  test.each([
    [0.0002, 0],
    [0.0005, 0.0001],
  ])("is found on a display whose last digit is %d, where most samples read alike", (digit, flowNoise) => {
    const { samples, flow } = makeTrace(
      { ...QUICK, noise: 0, flowNoise, drop: 0.03, at: 4 },
      normalNumbers(17),
    );
    const scale = samples.depression.map((pressure) => Math.sqrt(pressure / TARGET));
    const shown = flow.map((value, at) => Math.round((value * (scale[at] ?? 1)) / digit) * digit);
    const found = areaSteps(
      samples,
      shown.map((value, at) => value / (scale[at] ?? 1)),
      TARGET,
      WITHIN,
    );
    expect(found.map(({ kind }) => kind)).toEqual(["let-go"]);
    expect(found[0]?.time).toBeCloseTo(4, 1);
  });

  test("and takes hold again has both steps, in the order of time", () => {
    const made = makeTrace(QUICK, normalNumbers(11));
    const between = (at: number) => (made.samples.time[at] ?? 0) >= 2.5 && (made.samples.time[at] ?? 0) < 4.5;
    const flow = made.flow.map((value, at) => (between(at) ? value * 0.95 : value));
    const found = areaSteps(made.samples, flow, TARGET, WITHIN);
    expect(found.map(({ kind }) => kind)).toEqual(["let-go", "re-attached"]);
    expect(found[1]?.time).toBeCloseTo(4.5, 1);
  });

  test("on the way down is found there", () => {
    const down = makeTrace({ ...QUICK, count: 500 }, normalNumbers(13));
    const falling = down.samples.depression.map(
      (value, at) => value * Math.exp(-Math.max(0, at - 350) / 300),
    );
    const flow = down.flow.map((value, at) => (at >= 420 ? value * 0.94 : value));
    const [step] = areaSteps({ ...down.samples, depression: falling }, flow, TARGET, WITHIN);
    expect([step?.kind, step?.phase]).toEqual(["let-go", "falling"]);
  });
});

test("the result of a trace is the same every time", () => {
  expect(stepsOf({ ...QUICK, drop: 0.01, at: 3 }, 21)).toEqual(stepsOf({ ...QUICK, drop: 0.01, at: 3 }, 21));
});
