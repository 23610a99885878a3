import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareRuns } from "../../../shared/calc/comparison.ts";
import { gainAt } from "../../../shared/calc/gain.ts";
import { summary } from "../../../shared/calc/summary.ts";
import { evaluateText } from "../../kit/evaluate.ts";
import { type RunParts, runsText, twoRuns } from "../../kit/two-runs.ts";
import { checkClose } from "./close.ts";

type Points = RunParts["points"];

const BASELINE: Points = [
  [0.1, 50],
  [0.2, 100],
  [0.3, 150],
  [0.4, 180],
];

function compared(baseline: Points, own: Points, options?: Parameters<typeof twoRuns>[2]) {
  const [base, run] = twoRuns({ points: baseline }, { points: own }, options);
  return compareRuns(run, base);
}

describe("the lifts of two runs", () => {
  test("have the gain that hints show where both were read", () => {
    const [base, run] = twoRuns({ points: BASELINE }, { points: [[0.2, 103]] });
    const lift = compareRuns(run, base).lifts.find(({ own }) => own !== undefined);
    const station = run.rising[0];
    const gain = station && gainAt(station, run, base);
    checkClose(lift?.gained?.gain, 0.03, 1e-9);
    checkClose(lift?.gained?.noise, gain?.noise ?? 0, 1e-12);
  });

  test("lie on the line between two readings where only one was read, and end with the last reading", () => {
    const { lifts } = compared(BASELINE, [
      [0.05, 20],
      [0.15, 80],
      [0.25, 130],
    ]);
    const flows = lifts.map(({ lift, own, baseline, gained }) => [
      Math.round(lift / 2.54e-5) / 1000,
      own?.isRead,
      baseline?.isRead,
      gained !== undefined,
    ]);
    expect(flows).toEqual([
      [0.05, true, undefined, false],
      [0.1, false, true, true],
      [0.15, true, false, true],
      [0.2, false, true, true],
      [0.25, true, false, true],
      [0.3, undefined, true, false],
      [0.4, undefined, true, false],
    ]);
  });

  test("are resolved beyond 1.96 s √2, and not at it: 1.109 % at 0.4 %", () => {
    const at = (flow: number) => compared([[0.2, 100]], [[0.2, flow]]).lifts[0]?.gained?.isResolved;
    expect(at(101.1)).toBe(false);
    expect(at(101.12)).toBe(true);
    expect(at(98.88)).toBe(true);
  });

  test("are compared on the way down where both have been there", () => {
    const down: Points = [...BASELINE, [0.3, 150], [0.2, 100]];
    expect(compared(down, BASELINE).lifts.every(({ branch }) => branch === "rising")).toBe(true);
    expect(compared(down, down).lifts.filter(({ branch }) => branch === "falling")).toHaveLength(2);
  });
});

describe("the mean gain", () => {
  test("over the whole range is that of the two summaries", () => {
    const [base, run] = twoRuns(
      { points: BASELINE },
      {
        points: [
          [0.1, 52],
          [0.2, 101],
          [0.3, 155],
          [0.4, 190],
        ],
      },
    );
    const { mean, bands } = compareRuns(run, base);
    const [a, b] = [summary(base), summary(run)];
    checkClose(mean?.baseline, a.mean?.flow ?? 0, 1e-12);
    checkClose(mean?.own, b.mean?.flow ?? 0, 1e-12);
    checkClose(mean?.gain, (b.mean?.flow ?? 0) / (a.mean?.flow ?? 1) - 1, 1e-12);
    expect(bands.map(({ own }) => own)).toEqual([b.bands?.low, b.bands?.middle, b.bands?.high]);
  });

  test("has the scatter of a weighted sum: half a station at the ends, whole ones between", () => {
    // Weights 1/6, 1/3, 1/3, 1/6 of 50, 100, 150, 180 cfm: sqrt(8.333^2 + 33.33^2 + 50^2 + 30^2) · 0.4 % of 121.67, by hand.
    const { mean } = compared(BASELINE, BASELINE);
    const spread = (0.004 * Math.sqrt(8.3333 ** 2 + 33.3333 ** 2 + 50 ** 2 + 30 ** 2)) / 121.6667;
    checkClose(mean?.noise, 1.96 * Math.SQRT2 * spread, 1e-5);
  });

  test("is less sure where one run's straight lines cut a bend that the other has read", () => {
    const parabola = (lift: number) => 60 - 120 * (lift - 0.5) ** 2;
    const read = (lifts: readonly number[]): Points => lifts.map((lift) => [lift, parabola(lift)] as const);
    const fine = compared(read([0.1, 0.2, 0.3, 0.4, 0.5]), read([0.1, 0.3, 0.5])).mean;
    // Trapezoids by hand: 53.4 and 52.8 cfm.
    checkClose(fine?.gain, 52.8 / 53.4 - 1, 1e-3);
    expect(fine?.isResolved).toBe(false);
    const shared = compared(read([0.1, 0.3, 0.5]), read([0.1, 0.3, 0.5])).mean;
    expect(fine?.noise).toBeGreaterThan(shared?.noise ?? 9);
  });

  test("is over the stretch that both cover, and over none where they share none", () => {
    const { mean } = compared(BASELINE, [
      [0.25, 130],
      [0.35, 170],
    ]);
    checkClose(mean?.from, 0.25 * 0.0254, 1e-12);
    checkClose(mean?.to, 0.35 * 0.0254, 1e-12);
    // 150 cfm over the mean of 137.5 and 157.5, by hand.
    checkClose(mean?.gain, 150 / 147.5 - 1, 1e-6);
    expect(compared(BASELINE, [[0.5, 130]]).mean).toBeUndefined();
    expect(compared(BASELINE, []).mean).toBeUndefined();
  });

  test("scatters as it says (simulated by moving each reading by its deviation)", () => {
    const [base, run] = twoRuns({ points: BASELINE }, { points: BASELINE });
    const { mean } = compareRuns(run, base);
    let squares = 0;
    for (const moved of [0, 1, 2, 3]) {
      const points = BASELINE.map(([lift, flow], index): Points[number] => [
        lift,
        index === moved ? flow * 1.004 : flow,
      ]);
      squares += (compared(BASELINE, points).mean?.gain ?? 0) ** 2;
    }
    checkClose(mean?.noise, 1.96 * Math.sqrt(2 * squares), 1e-3);
  });

  test("counts the scales of two benches, and not that of one", () => {
    const south = twoRuns({ points: BASELINE }, { points: BASELINE, bench: "south" });
    const { mean } = compareRuns(south[1], south[0]);
    const same = compared(BASELINE, BASELINE).mean?.noise ?? 0;
    // Both state 1 % (k = 2): sqrt(2) · 0.5 %.
    checkClose(mean?.noise, Math.hypot(same, 1.96 * Math.SQRT2 * 0.005), 1e-6);
  });
});

describe("laws of comparisons", () => {
  const flow = fc.integer({ min: 60, max: 140 });
  const curve = fc.array(flow, { minLength: 2, maxLength: 6 });
  const points = (flows: readonly number[]): Points =>
    flows.map((value, index) => [((index + 1) / 10).toFixed(3), value]);

  test("do not depend on the unit of flow", () => {
    fc.assert(
      fc.property(curve, curve, (a, b) => {
        const metric = compared(points(a), points(b), { unit: "m3/h", factor: 1.699010795 });
        const here = compared(points(a), points(b));
        for (const [index, { gained }] of here.lifts.entries()) {
          const theirs = metric.lifts[index]?.gained;
          if (gained === undefined) expect(theirs).toBeUndefined();
          else expect(Math.abs(gained.gain - (theirs?.gain ?? 9))).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("exchanging the two inverts every gain and keeps what chance gives", () => {
    fc.assert(
      fc.property(curve, curve, (a, b) => {
        const there = compared(points(a), points(b));
        const back = compared(points(b), points(a));
        for (const [index, { gained }] of there.lifts.entries()) {
          const theirs = back.lifts[index]?.gained;
          if (gained === undefined || theirs === undefined) continue;
          checkClose((1 + gained.gain) * (1 + theirs.gain), 1, 1e-9);
          checkClose(gained.noise, theirs.noise, 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("two states of one run", () => {
  /** The run `r1` as it was and as it is, in records of their own. */
  function states(was: Points, is: Points, edited = (text: string) => text) {
    const [before] = evaluateText(runsText([{ points: was }])).runs;
    const [after] = evaluateText(edited(runsText([{ points: is }]))).runs;
    if (before === undefined || after === undefined) throw new RangeError("one run each is wanted");
    return compareRuns(after, before);
  }

  test("have no chance between them: what an edit of the set-up does is resolved however small it is", () => {
    const { sameReadings, lifts, mean } = states(BASELINE, BASELINE, (text) =>
      text.replace("leak none", "leak 0.1 cfm at 28 inH2O"),
    );
    expect(sameReadings).toBe(BASELINE.length);
    expect(lifts.map(({ gained }) => [gained?.noise, gained?.isResolved])).toEqual(
      BASELINE.map(() => [0, true]),
    );
    expect(mean).toMatchObject({ noise: 0, isResolved: true });
  });

  test("that are equal do not differ", () => {
    const { lifts, mean } = states(BASELINE, BASELINE);
    expect(lifts.map(({ gained }) => [gained?.gain, gained?.isResolved])).toEqual(
      BASELINE.map(() => [0, false]),
    );
    expect(mean).toMatchObject({ gain: 0, noise: 0, isResolved: false });
  });

  test("have chance in what was read again, and in their means as far as that goes", () => {
    const again: Points = [...BASELINE.slice(0, 3), [0.4, 181]];
    const { sameReadings, lifts, mean } = states(BASELINE, again);
    expect(sameReadings).toBe(3);
    // 1.96 s √2 at 0.4 %.
    expect(lifts.map(({ gained }) => gained?.noise)).toEqual([0, 0, 0, expect.closeTo(0.011087, 5)]);
    // The last station weighs 0.05 of 0.3 in: 1/6 of 180.5 over a mean near 121.7, of 1.96 s √2.
    checkClose(mean?.noise, (180.5 / 6 / 121.7) * 1.96 * 0.004 * Math.SQRT2, 2e-2);
  });

  test("that were taken at two times are two runs", () => {
    const { sameReadings, lifts } = states(BASELINE, BASELINE, (text) =>
      text.replace("2026-03-02", "2026-03-03"),
    );
    expect(sameReadings).toBe(0);
    expect(lifts[0]?.gained?.noise).toBeGreaterThan(0);
  });
});
