// The simulator itself against what is known of controllers and of restrictions in series.
import { describe, expect, test } from "vitest";
import { approach, type Controller, QUICK_BENCH, STEP, settleTime } from "../kit/simulator/bench.ts";
import { judgeRecord } from "../kit/simulator/judged.ts";
import { inSeries, portFlow, type SimulatedPort, STABLE_PORT, unstablePort } from "../kit/simulator/port.ts";
import { normals } from "../kit/simulator/random.ts";
import { benchBlock, PORT_BLOCK, runBlock, sessionBlock } from "../kit/simulator/record.ts";
import { sweep } from "../kit/simulator/sweep.ts";
import { BAND, DENSITY, LIFTS, TARGET } from "./settings.ts";

const LIFT = 0.5 * 0.0254;

function samplesOf(controller: Controller, port: SimulatedPort = STABLE_PORT, more: object = {}) {
  const bench = { ...QUICK_BENCH, deadTime: 0, controller, ...more };
  return approach({ port, bench, lift: LIFT, target: TARGET, density: DENSITY, time: 30 });
}

describe("settling (handbook section 12)", () => {
  test("0 to 28 within 0.2 inH2O takes a first-order bench 4.9416424 time constants: 3.9533 s at 0.8 s", () => {
    const time = settleTime(samplesOf({ order: 1, time: 0.8 }), TARGET, BAND);
    expect(Math.abs(time - 3.9533139)).toBeLessThanOrEqual(STEP);
  });

  test.each([
    [0.3, 11.2301],
    [0.5, 8.0764],
    [0.7, 5.9788],
    [1, 5.8339],
    [1.5, 10.6547],
  ])("within 2 %% takes a second-order bench of damping %d so many radians: %d", (damping, radians) => {
    const time = settleTime(samplesOf({ order: 2, frequency: 2, damping }), TARGET, 0.02 * TARGET);
    expect(Math.abs(2 * time - radians)).toBeLessThanOrEqual(2 * 2 * STEP);
  });

  test("waits for the dead time, and no longer than a limited blower", () => {
    const plain = settleTime(samplesOf({ order: 1, time: 0.3 }), TARGET, BAND);
    const dead = settleTime(samplesOf({ order: 1, time: 0.3 }, STABLE_PORT, { deadTime: 0.4 }), TARGET, BAND);
    expect(dead - plain).toBeCloseTo(0.4, 6);
    const limited = samplesOf({ order: 1, time: 0.3 }, STABLE_PORT, { rateLimit: TARGET / 4 });
    const steepest = Math.max(
      ...limited.slice(1).map(({ depression }, i) => (depression - (limited[i]?.depression ?? 0)) / STEP),
    );
    expect(steepest).toBeLessThanOrEqual((TARGET / 4) * (1 + 1e-9));
  });
});

describe("the port", () => {
  test("500 and 800 mm2 in series are 423.99915 mm2 (handbook section 4.6)", () => {
    expect(inSeries(500, 800)).toBeCloseTo(423.99915, 4);
  });

  test("drops by what it was asked for where it lets go, and never below its edge", () => {
    const port = unstablePort(0.03);
    const flow = (lift: number, isAttached: boolean) => portFlow(port, lift, TARGET, DENSITY, isAttached);
    expect(1 - flow(LIFT, false) / flow(LIFT, true)).toBeCloseTo(0.03, 9);
    expect(flow(LIFT, true)).toBeCloseTo(flow(0.6 * 0.0254, true), 12);
    const low = approach({
      port,
      bench: QUICK_BENCH,
      lift: 0.4 * 0.0254,
      target: TARGET,
      density: DENSITY,
      time: 4,
    });
    expect(low.every(({ isAttached }) => isAttached)).toBe(true);
  });

  test("lets go on a quick bench and not on a slow one; the depression then jumps up and the flow down", () => {
    const port = unstablePort(0.03);
    const quick = samplesOf({ order: 1, time: 0.3 }, port);
    const at = quick.findIndex(({ isAttached }) => !isAttached);
    expect(at).toBeGreaterThan(0);
    expect(quick.at(-1)?.isAttached).toBe(false);
    expect((quick[at + 1]?.depression ?? 0) - (quick[at - 1]?.depression ?? 0)).toBeGreaterThan(
      0.01 * TARGET,
    );
    expect(samplesOf({ order: 1, time: 3 }, port).every(({ isAttached }) => isAttached)).toBe(true);
  });

  test("once let go it comes back only below its lower lift", () => {
    const port = unstablePort(0.03);
    const from = (lift: number) =>
      approach({
        port,
        bench: QUICK_BENCH,
        lift: lift * 0.0254,
        target: TARGET,
        density: DENSITY,
        time: 1,
        isAttached: false,
        from: TARGET,
      }).at(-1)?.isAttached;
    expect([from(0.46), from(0.43), from(0.41)]).toEqual([false, false, true]);
  });
});

describe("a simulated record", () => {
  const readings = (seed: number) =>
    sweep({
      port: STABLE_PORT,
      bench: QUICK_BENCH,
      operator: { kind: "waits", after: 0.5 },
      normal: normals(seed),
      lifts: LIFTS,
      repeats: 1,
      target: TARGET,
      band: BAND,
      density: DENSITY,
      noise: 0.003,
      liftNoise: 0.00001,
      edgeNoise: 0.1,
    });

  test("is one that nothing is wrong with", () => {
    const bench = benchBlock("b", { repeat: 0.003, quick: 2.5, within: BAND });
    const session = sessionBlock({ target: TARGET, leak: QUICK_BENCH.leak, hasPort: true });
    const [run] = judgeRecord(
      `headnote 1\n${bench}${PORT_BLOCK}${session}${runBlock("r", "b", readings(1))}`,
    );
    expect([...(run?.codes ?? ["none"])]).toEqual([]);
    expect(run?.result.rising).toHaveLength(11);
    for (const { lift, flow } of run?.result.rising ?? []) {
      expect(Math.abs(flow / portFlow(STABLE_PORT, lift, TARGET, DENSITY, true) - 1)).toBeLessThan(0.02);
    }
  });

  test("is the same for the same seed and another for another", () => {
    expect(readings(5)).toEqual(readings(5));
    expect(readings(5)).not.toEqual(readings(6));
  });
});
