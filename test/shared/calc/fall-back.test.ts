import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fallBacks } from "../../../shared/calc/fall-back.ts";
import { flatDropQuantile } from "../../../shared/calc/flat-drop.ts";
import type { FallBack, Repeatability } from "../../../shared/model/result.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { known, stations } from "../../kit/stations.ts";
import { AS_CAST } from "../sample-record.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

function judge(flows: readonly number[], deviation: number, readings?: readonly number[]): FallBack[] {
  return fallBacks(stations(flows, readings), known(deviation));
}

/** Where each fall-back begins, is deepest and ends, by lift; 0 for no recovery. */
function places(found: readonly FallBack[]): readonly (readonly number[])[] {
  return found.map(({ onset, deepest, last, recovery }) => [
    onset.lift,
    deepest.lift,
    last.lift,
    recovery?.lift ?? 0,
  ]);
}

describe("the fall-back of the sample record (computed apart)", () => {
  const { fallBacks: found } = evaluateRun(AS_CAST);
  const [fall] = found;

  test("begins at 0.400 in, is 2.149 % deep at 0.600 in and does not recover", () => {
    expect(found).toHaveLength(1);
    checkClose(fall?.onset.lift, 0.4 * 0.0254, 1e-12);
    checkClose(fall?.deepest.lift, 0.6 * 0.0254, 1e-12);
    checkClose(fall?.depth, (228 - 223.1) / 228, 1e-12);
    expect(fall?.recovery).toBeUndefined();
  });

  test("is resolved: a flat of three stations falls by 1.03 % in 5 % of sweeps (2.0808 · 0.35 % · √2)", () => {
    expect(fall?.resolved).toBe(true);
    expect(fall?.stations).toBe(3);
    checkClose(fall?.chance, 2.0808 * 0.0035 * Math.SQRT2, 1e-4);
    expect(fall?.readingsNeeded).toBe(1);
  });
});

describe("where a fall-back begins and ends", () => {
  test("from the highest station so far to the last below it", () => {
    expect(places(judge([50, 100, 97, 96, 98], 0.001))).toEqual([[2, 4, 5, 0]]);
  });

  test("of equally high stations from the later", () => {
    expect(places(judge([50, 100, 100, 97], 0.001))).toEqual([[3, 4, 4, 0]]);
  });

  test("counts an equal station as reached: the onset has recovered there and begins anew", () => {
    expect(places(judge([100, 98, 100, 97], 0.001))).toEqual([
      [1, 2, 2, 3],
      [3, 4, 4, 0],
    ]);
  });

  test("to the first station that reaches the onset again", () => {
    expect(places(judge([100, 97, 98, 100, 99.9], 0.005))).toEqual([[1, 2, 3, 4]]);
  });

  test("and another one is looked for after the recovery", () => {
    expect(places(judge([100, 97, 110, 105, 100, 120], 0.001))).toEqual([
      [1, 2, 2, 3],
      [3, 5, 5, 6],
    ]);
  });

  test("nowhere on a rising curve, or on fewer than two stations", () => {
    expect(judge([50, 100, 150], 0.001)).toEqual([]);
    expect(judge([50], 0.001)).toEqual([]);
    expect(judge([], 0.001)).toEqual([]);
  });

  test("nowhere where no air flows", () => {
    expect(judge([0, -1, -2], 0.001)).toEqual([]);
  });
});

describe("whether a fall-back is resolved", () => {
  test("not by 1.2 % at 0.5 % repeatability: three flat stations fall by 1.471 % in 5 % of sweeps", () => {
    const [fall] = judge([100, 99.5, 98.8], 0.005);
    expect(fall?.resolved).toBe(false);
    checkClose(fall?.chance, 2.0808 * 0.005 * Math.SQRT2, 1e-4);
  });

  test("by the same drop with two readings at each station, as the hint says", () => {
    // n > 2 (2.0808 · 0.5 / 1.2)^2 = 1.503
    expect(judge([100, 99.5, 98.8], 0.005)[0]?.readingsNeeded).toBe(2);
    const [fall] = judge([100, 99.5, 98.8], 0.005, [2, 2, 2]);
    expect(fall?.resolved).toBe(true);
    checkClose(fall?.chance, 2.0808 * 0.005, 1e-4);
  });

  test("counts the readings of both stations", () => {
    const [fall] = judge([100, 97], 0.01, [2, 3]);
    checkClose(fall?.chance, 1.6449 * 0.01 * Math.sqrt(1 / 2 + 1 / 3), 1e-4);
  });

  test("if any of its stations is, also one that is not the deepest", () => {
    const [fall] = judge([100, 97.9, 97.8], 0.01, [4, 4, 1]);
    expect(fall?.deepest.lift).toBe(3);
    expect(fall?.resolved).toBe(true);
    expect(fall?.depth).toBeLessThan(fall?.chance ?? 0);
  });

  test("drops below one standard uncertainty are not spoken of", () => {
    expect(judge([100, 99.3], 0.005)).toEqual([]);
    expect(judge([100, 99.29], 0.005)).toHaveLength(1);
  });

  test("counts the stations from the first at 95 % of the onset to the end of the sweep, at least two", () => {
    const counts = (flows: readonly number[]) => judge(flows, 0.001).map((fall) => fall.stations);
    expect(counts([50, 94.9, 95, 99, 100, 90, 85])).toEqual([5]);
    expect(counts([50, 100, 90])).toEqual([2]);
    // The second onset has a flat of its own, which begins later.
    expect(counts([100, 97, 110, 105, 100, 120])).toEqual([6, 4]);
  });

  test("the station that stands furthest beyond chance need not be the deepest", () => {
    // Units of 1 %: 2.1/sqrt(1/4 + 1/4) = 2.97 and 2.2/sqrt(1/4 + 1) = 1.97, by hand.
    const [fall] = judge([100, 97.9, 97.8], 0.01, [4, 4, 1]);
    expect(fall?.deepest.lift).toBe(3);
    expect(fall?.clearest.station.lift).toBe(2);
    checkClose(fall?.clearest.drop, 0.021, 1e-9);
    checkClose(fall?.clearest.chance, 2.0808 * 0.01 * Math.SQRT1_2, 1e-4);
  });

  test("counts its stations from the first that reaches 95 % of its onset, in any sweep", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 300 }), { maxLength: 40 }), (flows) => {
        for (const { onset, stations: k } of judge(flows, 0.01)) {
          const first = flows.findIndex((flow) => flow >= 0.95 * onset.flow);
          expect(k).toBe(Math.max(2, flows.length - first));
        }
      }),
    );
  });

  test("that recovers ten thousand times in one sweep is found each time, without end of work", () => {
    const flows = Array.from({ length: 20_000 }, (_, at) => (at % 2 === 0 ? 100 + at / 100 : 90 + at / 100));
    const found = judge(flows, 0.01);
    expect(found.length).toBe(10_000);
    expect(found[0]?.stations).toBe(20_000);
    expect(found.at(-1)?.stations).toBeLessThan(2000);
  });

  test("has a limit for sweeps of any length: 60 and 1000 stations, above that of 59 and 999", () => {
    const flat = (count: number) => [...Array.from({ length: count - 1 }, () => 100), 96];
    for (const count of [60, 1000]) {
      const chance = (k: number) => judge(flat(k), 0.01, undefined)[0]?.chance ?? 0;
      expect(judge(flat(count), 0.01)[0]?.stations).toBe(count);
      checkClose(chance(count), (flatDropQuantile(count) ?? 0) * 0.01 * Math.SQRT2, 1e-9);
      expect(chance(count)).toBeGreaterThan(chance(count - 1));
    }
  });

  test("a pooled deviation of 4 degrees of freedom widens the limit by 2.1318/1.6449 (tables of Student's t)", () => {
    const pooled: Repeatability = { deviation: 0.01, source: "pooled", degreesOfFreedom: 4 };
    const [fall] = fallBacks(stations([100, 97]), pooled);
    checkClose(fall?.chance, 1.6449 * 0.01 * Math.SQRT2 * (2.1318 / 1.6449), 1e-4);
  });

  test.each([3, 6, 10])("cries wolf in 5 % of flat sweeps of %d stations (simulated)", (count) => {
    const normals = seededNormals(count);
    const sweeps = 4000;
    let alarms = 0;
    for (let i = 0; i < sweeps; i++) {
      const flows = Array.from({ length: count }, () => 100 * (1 + 0.003 * normals.next().value));
      if (judge(flows, 0.003).some((fall) => fall.resolved)) alarms++;
    }
    // Three standard deviations of a share of 5 % in 4000 sweeps are 1.03 %.
    expect(Math.abs(alarms / sweeps - 0.05)).toBeLessThan(0.0104);
  });
});

describe("laws of fall-backs", () => {
  const flows = fc.array(fc.integer({ min: 1, max: 300 }), { maxLength: 15 });

  test("no station stands inside two of them, and each is lower than its onset", () => {
    fc.assert(
      fc.property(flows, (values) => {
        let end = 0;
        for (const { onset, deepest, last, recovery, depth } of judge(values, 0.002)) {
          expect(onset.lift).toBeGreaterThanOrEqual(end);
          expect(deepest.lift).toBeGreaterThan(onset.lift);
          expect(last.lift).toBeGreaterThanOrEqual(deepest.lift);
          if (recovery !== undefined) expect(recovery.flow).toBeGreaterThanOrEqual(onset.flow);
          checkClose(depth, 1 - deepest.flow / onset.flow, 1e-12);
          end = recovery?.lift ?? Number.POSITIVE_INFINITY;
        }
      }),
    );
  });

  test("the readings that an unresolved one asks for would resolve it, and one fewer would not", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0072, max: 0.02, noNaN: true }), (depth) => {
        const flat = [100, 100 * (1 - depth)];
        const [fall] = judge(flat, 0.005);
        const needed = fall?.readingsNeeded ?? 0;
        const limit = (n: number) => (flatDropQuantile(2) ?? 0) * 0.005 * Math.sqrt(2 / n);
        expect(depth).toBeGreaterThan(limit(needed));
        if (needed > 1) expect(depth).toBeLessThanOrEqual(limit(needed - 1) * (1 + 1e-12));
        expect(judge(flat, 0.005, [needed, needed])[0]?.resolved).toBe(true);
      }),
    );
  });

  test("do not depend on the unit of flow", () => {
    fc.assert(
      fc.property(flows, (values) => {
        const halved = values.map((value) => value / 1024);
        expect(places(judge(halved, 0.002))).toEqual(places(judge(values, 0.002)));
      }),
    );
  });
});

test("where the repeatability is pooled, the limit is Student's: two stations fall back by 2.1318 · s · √2 at 4 degrees", () => {
  const pooled: Repeatability = { deviation: 0.01, source: "pooled", degreesOfFreedom: 4 };
  const [fall] = fallBacks(stations([100, 97]), pooled);
  checkClose(fall?.chance, 2.131847 * 0.01 * Math.SQRT2, 1e-4);
  const [six] = fallBacks(stations([100, 99.9, 99.8, 99.7, 99.6, 96]), pooled);
  // By simulation of 60 000 sweeps 4.20; the normal 2.634 widened by t/z would be 3.41.
  checkClose(six?.chance, 4.2 * 0.01 * Math.SQRT2, 2e-3);
});
