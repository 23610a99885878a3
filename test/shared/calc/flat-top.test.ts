import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fallBacks } from "../../../shared/calc/fall-back.ts";
import { flatStretch, flatTop } from "../../../shared/calc/flat-top.ts";
import type { Repeatability } from "../../../shared/model/result.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { known, stations } from "../../kit/stations.ts";
import { checkClose } from "./close.ts";

function stretch(flows: readonly number[], deviation: number, readings?: readonly number[]) {
  const rising = stations(flows, readings);
  const repeatability = known(deviation);
  return flatStretch({ rising, repeatability, fallBacks: fallBacks(rising, repeatability) });
}

/** Lifts of the flat stretch. */
function lifts(flows: readonly number[], deviation: number, readings?: readonly number[]) {
  return stretch(flows, deviation, readings)?.stations.map(({ lift }) => lift) ?? [];
}

/** The same from its definition: every pair of stations is tried. */
function byTrying(
  flows: readonly number[],
  deviation: number,
  readings: readonly number[],
): readonly number[] {
  const rising = stations(flows, readings);
  const falls = fallBacks(rising, known(deviation)).filter(({ resolved }) => resolved);
  const peak = Math.max(...flows);
  const isTop = (at: number) =>
    (flows[at] ?? 0) >= 0.95 * peak &&
    !falls.some(({ onset, last }) => at + 1 > onset.lift && at + 1 <= last.lift);
  let best: number[] = [];
  for (let from = 0; from < flows.length; from++) {
    for (let to = from + 1; to < flows.length; to++) {
      const all = Array.from({ length: to - from + 1 }, (_, index) => from + index);
      if (!all.every(isTop)) break;
      const unit = Math.sqrt(1 / (readings[from] ?? 1) + 1 / (readings[to] ?? 1));
      const rise = (flows[to] ?? 0) / (flows[from] ?? 1) - 1;
      if (rise <= 1.645 * deviation * unit && all.length > best.length) best = all;
    }
  }
  return best.map((at) => at + 1);
}

describe("the flat stretch of a curve", () => {
  test("is as long as its last station does not stand above its first", () => {
    // 1.645 · 0.4 % · sqrt(2) = 0.9306 %, by hand.
    expect(lifts([50, 90, 100, 100.5, 100.93], 0.004)).toEqual([3, 4, 5]);
    expect(lifts([50, 90, 100, 100.5, 100.94], 0.004)).toEqual([3, 4]);
    checkClose(stretch([50, 90, 100, 100.5, 100.93], 0.004)?.chance, 0.009306, 1e-3);
    checkClose(stretch([50, 90, 100, 100.5, 100.93], 0.004)?.rise, 0.0093, 1e-9);
  });

  test("lies within 5 % of the peak", () => {
    expect(lifts([94.9, 94.9, 94.9, 100], 0.004)).toEqual([]);
    expect(lifts([95, 95, 95, 100], 0.004)).toEqual([1, 2, 3]);
  });

  test("may hold a dip that is not resolved, and no fall-back that is", () => {
    expect(lifts([90, 100, 99.2, 100], 0.004)).toEqual([2, 3, 4]);
    expect(lifts([90, 100, 97, 96.5, 97, 97], 0.004)).toEqual([]);
  });

  test("may end where a fall-back begins, and begin where it has recovered", () => {
    expect(lifts([99.9, 100, 100.1, 96], 0.004)).toEqual([1, 2, 3]);
    expect(lifts([100, 96, 100, 100.2, 100.1], 0.004)).toEqual([3, 4, 5]);
  });

  test("of two equally long ones is the first", () => {
    expect(lifts([97, 97.1, 100, 100.1], 0.004)).toEqual([1, 2]);
  });

  test("is judged by the readings averaged at both its ends", () => {
    // 1.645 · 1 % · sqrt(1/4 + 1/9) = 0.989 %, by hand; sqrt(2) would give 2.33 %.
    expect(lifts([100, 100.98], 0.01, [4, 9])).toEqual([1, 2]);
    expect(lifts([100, 101], 0.01, [4, 9])).toEqual([]);
  });

  test("is judged more widely where the repeatability is itself but pooled (2.1318/1.6449 at 4 degrees)", () => {
    const pooled: Repeatability = { deviation: 0.004, source: "pooled", degreesOfFreedom: 4 };
    const rising = stations([100, 101]);
    expect(lifts([100, 101], 0.004)).toEqual([]);
    const found = flatStretch({ rising, repeatability: pooled, fallBacks: [] });
    checkClose(found?.chance, 0.009306 * (2.1318 / 1.6449), 1e-3);
  });

  test("is not there without two stations, or without flow", () => {
    expect(lifts([], 0.004)).toEqual([]);
    expect(lifts([100], 0.004)).toEqual([]);
    expect(lifts([0, 0, 0], 0.004)).toEqual([]);
    expect(lifts([-1, -2], 0.004)).toEqual([]);
  });

  test("is the one that trying every pair of stations finds", () => {
    const station = fc.record({
      flow: fc.integer({ min: 930, max: 1000 }),
      rows: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(station, { maxLength: 14 }), (curve) => {
        const flows = curve.map(({ flow }) => flow);
        const readings = curve.map(({ rows }) => rows);
        expect(lifts(flows, 0.006, readings)).toEqual(byTrying(flows, 0.006, readings));
      }),
      { numRuns: 400 },
    );
  });

  test("does not depend on the unit of flow", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 900, max: 1000 }), { maxLength: 12 }), (flows) => {
        expect(
          lifts(
            flows.map((flow) => flow / 1024),
            0.004,
          ),
        ).toEqual(lifts(flows, 0.004));
      }),
    );
  });

  test("of ten thousand stations that climb within 5 % is found", () => {
    const climb = Array.from({ length: 10_000 }, (_, at) => 96 + at * 4e-4);
    // 0.9306 % of 96 are 0.8934, 2233 steps of 0.0004; further up the same share is more of them.
    expect(lifts(climb, 0.004).length).toBeGreaterThan(2234);
  });
});

/** A run whose flow is flat from 0.5 in on; the valve's curtain is its disc's area at 0.5 in (2 in, L/D 0.25). */
function run(options: {
  bench?: string;
  port?: string;
  settle?: readonly string[];
  rows?: readonly string[];
}) {
  const { bench = "quick 2 s", port = "valve 2 in", settle = ["1", "1", "3", "1"] } = options;
  const rows = options.rows ?? ["0.4 28 190", "0.5 28 220", "0.55 28 220", "0.6 28 220"];
  return evaluateRun(`headnote 1
bench b
  shows flow
  repeat 0.4 %
  ${bench}
port p
  side intake
  ${port}
session 2026-03-02
  bench b
  port p
  target 28 inH2O
run r
  lift[in] depression[inH2O] flow[cfm] settle[s]
  ${rows.map((row, index) => `${row} ${settle[index] ?? "-"}`).join("\n  ")}
`);
}

describe("whether a flat top is questioned", () => {
  const slowest = (options: Parameters<typeof run>[0]) => {
    const lift = flatTop(run(options))?.slowest.lift;
    return lift === undefined ? undefined : Math.round(lift / 2.54e-5) / 1000;
  };

  test("where a station behind its first took longer than the bench's quick, and there alone", () => {
    expect(slowest({})).toBe(0.55);
    expect(slowest({ settle: ["9", "9", "2", "2"] })).toBeUndefined();
    expect(slowest({ settle: ["1", "1", "2.01", "2.5"] })).toBe(0.6);
    expect(slowest({ settle: ["1", "1", "2.5", "2.5"] })).toBe(0.55);
  });

  test("else than one and a half times its usual settle", () => {
    expect(slowest({ bench: "settle 1.4 s", settle: ["1", "1", "2.1", "1"] })).toBeUndefined();
    expect(slowest({ bench: "settle 1.4 s", settle: ["1", "1", "2.2", "1"] })).toBe(0.55);
    expect(flatTop(run({ bench: "settle 1.4 s", settle: ["1", "1", "2.2", "1"] }))?.quick.from).toBe(
      "settle",
    );
    expect(slowest({ bench: "settle 1 s\n  quick 2 s", settle: ["1", "1", "1.8", "1"] })).toBeUndefined();
  });

  test("not on a bench that says neither, nor where nothing was timed", () => {
    expect(slowest({ bench: "within 0.2 inH2O" })).toBeUndefined();
    expect(slowest({ settle: ["-", "-", "-", "-"] })).toBeUndefined();
  });

  test("by the slowest of the readings that were averaged", () => {
    const rows = ["0.4 28 190", "0.5 28 220", "0.55 28 220", "0.55 28 220", "0.6 28 220"];
    expect(slowest({ rows, settle: ["1", "1", "3", "1", "1"] })).toBe(0.55);
    expect(flatTop(run({ rows, settle: ["1", "1", "3", "1", "1"] }))?.settle).toBe(3);
  });

  test("with two stations only where it begins below the lift from which a curve must flatten", () => {
    const two = (first: string, last: string) => ({
      rows: ["0.2 28 60", `${first} 28 120`, `${last} 28 120`],
      settle: ["1", "1", "3"],
    });
    expect(slowest(two("0.49", "0.55"))).toBe(0.55);
    expect(slowest(two("0.5", "0.55"))).toBeUndefined();
    expect(slowest({ ...two("0.49", "0.55"), port: "length 5 in" })).toBeUndefined();
    // With seat, throat and stem the gap reaches the throat's area at another lift.
    const known = "valve 2 in\n  seat 45 deg width 0.06 in\n  throat 1.7 in\n  stem 0.34 in";
    const from = flatTop(run({ port: known }))?.mustFlattenFrom ?? 0;
    const inches = from / 0.0254;
    expect(inches).toBeGreaterThan(0.3);
    expect(Math.abs(inches - 0.5)).toBeGreaterThan(0.01);
    const near = (by: number) => two((inches + by).toFixed(3), "0.6");
    expect(slowest({ ...near(-0.005), port: known })).toBe(0.6);
    expect(slowest({ ...near(0.005), port: known })).toBeUndefined();
  });
});
