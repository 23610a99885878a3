import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isSamePortOnTwoBenches, twoBenches } from "../../../shared/calc/two-benches.ts";
import { BENCH_LINES, type RunParts, twoRuns } from "../../kit/two-runs.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

type Points = RunParts["points"];

function benches(first: Points, second: Points, options?: Parameters<typeof twoRuns>[2]) {
  const [a, b] = twoRuns({ points: first }, { points: second, bench: "south" }, options);
  return { a, b, found: twoBenches(a, b) };
}

const scaled = (points: Points, factor: number): Points =>
  points.map(([lift, flow, settle]) => [lift, flow * factor, settle] as const);
const inches = (lift: number) => Math.round(lift / 2.54e-5) / 1000;

const STEADY: Points = [
  [0.1, 60],
  [0.2, 120],
  [0.3, 165],
  [0.4, 190],
  [0.5, 205],
];
const FALLING: Points = [...STEADY.slice(0, 4), [0.5, 183], [0.6, 184]];
const FLAT: Points = [...STEADY.slice(0, 4), [0.5, 190.4], [0.6, 190.2]];

describe("the scale ratio", () => {
  test("is what one bench reads of the other, and inverts when they are exchanged", () => {
    const { found } = benches(STEADY, scaled(STEADY, 1.02));
    checkClose(found.scale?.ratio, 1.02, 1e-6);
    expect(found.scale?.lifts).toBe(5);
    const ratio = fc.double({ min: 0.8, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(fc.array(ratio, { minLength: 5, maxLength: 5 }), (ratios) => {
        const other = STEADY.map(([lift, flow], index): Points[number] => [
          lift,
          flow * (ratios[index] ?? 1),
        ]);
        const { a, b, found: there } = benches(STEADY, other);
        const back = twoBenches(b, a);
        checkClose((there.scale?.ratio ?? 0) * (back.scale?.ratio ?? 0), 1, 1e-12);
        checkClose(there.scale?.uncertainty, back.scale?.uncertainty ?? 0, 1e-9);
        for (const [index, { en }] of there.lifts.entries())
          checkClose(en, 0 - (back.lifts[index]?.en ?? 0), 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test("does not depend on the unit of flow", () => {
    const metric = benches(STEADY, scaled(STEADY, 1.013), { unit: "L/s", factor: 0.4719474432 }).found;
    const here = benches(STEADY, scaled(STEADY, 1.013)).found;
    checkClose(metric.scale?.ratio, here.scale?.ratio ?? 0, 1e-6);
    checkClose(metric.lifts[2]?.en, here.lifts[2]?.en ?? 0, 1e-3);
  });

  test("of n lifts is √n times as sure as of one, and what all lifts share is added whole", () => {
    const one: Points = [[0.3, 165.0001]];
    const four: Points = ["0.300", "0.301", "0.302", "0.303"].map((lift) => [lift, 165.0001] as const);
    const own = (points: Points) => {
      const { found } = benches(points, points);
      return found.scale?.uncertainty ?? 0;
    };
    // 2 · 0.4 % · √2, and the air: 0.3 K, 50 Pa and 5 %RH leave 0.06 % of the flow open on each bench.
    const shared = own(one) ** 2 - 4 * 2 * 0.004 ** 2;
    expect(Math.sqrt(shared)).toBeLessThan(0.004);
    checkClose(own(four) ** 2 - shared, (own(one) ** 2 - shared) / 4, 1e-3);
  });

  test("is less sure where the lifts scatter more than both benches repeat (Birge)", () => {
    const apart = [1.05, 0.95, 1.05, 0.95, 1.0];
    const other = STEADY.map(([lift, flow], index): Points[number] => [lift, flow * (apart[index] ?? 1)]);
    const calm = benches(STEADY, STEADY).found.scale?.uncertainty ?? 0;
    expect(benches(STEADY, other).found.scale?.uncertainty).toBeGreaterThan(3 * calm);
  });

  test("covers the true ratio in 95 % of simulated pairs of sweeps", () => {
    const normals = seededNormals(3);
    let covered = 0;
    const rounds = 300;
    const noisy = (points: Points, factor: number): Points =>
      points.map(([lift, flow]) => [lift, flow * factor * (1 + 0.004 * normals.next().value)] as const);
    for (let round = 0; round < rounds; round++) {
      const { scale } = benches(noisy(STEADY, 1), noisy(STEADY, 1.01)).found;
      const { ratio = 1, uncertainty = 0 } = scale ?? {};
      if (Math.abs(Math.log(ratio / 1.01)) <= uncertainty) covered++;
    }
    // The air's part is added although nothing moves it here, and Birge only ever widens: never below 93 %.
    expect(covered / rounds).toBeGreaterThan(0.93);
  });

  test("leaves out lifts at which one bench resolves a fall-back", () => {
    const { found } = benches(FALLING, scaled(FLAT, 1.01));
    expect(found.scale?.lifts).toBe(4);
    checkClose(found.scale?.ratio, 1.01, 1e-6);
    const left = found.lifts.filter(({ residual, noise }) => Math.abs(residual ?? 0) > noise);
    expect(left.map(({ lift }) => inches(lift))).toEqual([0.5, 0.6]);
    checkClose(found.lifts[4]?.residual, 190.4 / 183 - 1, 1e-5);
  });

  test("is none where the port has let go on one bench at all lifts that both read", () => {
    expect(benches(FALLING, [[0.5, 191]]).found.scale).toBeUndefined();
    expect(benches(FALLING, [[0.4, 191.9]]).found.scale?.lifts).toBe(1);
  });

  test("is judged by what both benches state of their scales, if both do", () => {
    const { scale } = benches(STEADY, scaled(STEADY, 1.02)).found;
    checkClose(scale?.stated, Math.SQRT2 * 0.01, 1e-12);
    checkClose(scale?.en, Math.log(1.02) / Math.hypot(scale?.uncertainty ?? 0, Math.SQRT2 * 0.01), 1e-6);
    const silent = benches(STEADY, STEADY, { south: BENCH_LINES.slice(0, 2) }).found.scale;
    expect(silent?.stated).toBeUndefined();
    expect(silent?.en).toBeUndefined();
  });
});

describe("the En numbers", () => {
  test("count every uncertainty of both: at one lift the difference over the root of both U squared", () => {
    const { a, b, found } = benches(STEADY, scaled(STEADY, 1.03));
    for (const [index, { en }] of found.lifts.entries()) {
      const [x, y] = [a.rising[index], b.rising[index]];
      if (x === undefined || y === undefined) throw new RangeError("a station is wanted");
      checkClose(en, (y.flow - x.flow) / Math.hypot(x.flow * x.uncertainty, y.flow * y.uncertainty), 1e-9);
    }
  });

  test("are there at lifts that only one bench read, on the line between two of the other", () => {
    const { lifts } = benches(STEADY, [
      [0.15, 92],
      [0.35, 179],
    ]).found;
    expect(lifts.map(({ lift, isRead }) => [inches(lift), isRead])).toEqual([
      [0.15, false],
      [0.2, false],
      [0.3, false],
      [0.35, false],
    ]);
  });
});

describe("a hidden fall-back", () => {
  test("is one that one bench resolves where the other goes flat", () => {
    const { found } = benches(FALLING, FLAT);
    const [hidden] = found.hidden;
    expect(found.hidden).toHaveLength(1);
    expect(hidden?.resolvedBy).toBe("first");
    expect(hidden?.flat?.stations.map(({ lift }) => inches(lift))).toEqual([0.4, 0.5, 0.6]);
    expect(inches(hidden?.at.lift ?? 0)).toBe(0.5);
    expect(benches(FLAT, FALLING).found.hidden[0]?.resolvedBy).toBe("second");
  });

  test("is one too where the other only climbs on, and then there is no flat", () => {
    const climbing: Points = [...STEADY, [0.6, 214]];
    const [hidden] = benches(FALLING, climbing).found.hidden;
    expect(hidden?.resolvedBy).toBe("first");
    expect(hidden?.flat).toBeUndefined();
  });

  test("is none where both resolve one, even at another lift of the same fall", () => {
    expect(benches(FALLING, FALLING).found.hidden).toEqual([]);
    const later: Points = [...STEADY.slice(0, 4), [0.45, 191], [0.5, 184], [0.6, 184]];
    expect(benches(FALLING, later).found.hidden).toEqual([]);
  });

  test("is none where the other drops nearly as far, though not by enough to resolve it", () => {
    // Three stations from 95 % of the onset on: 2.0808 sqrt(2) 0.4 % = 1.18 %, and with two benches √2 times that.
    const [drops, nearly]: Points[] = [1.3, 0.9].map((drop) => [
      ...STEADY.slice(0, 4),
      [0.5, 190 * (1 - drop / 100)],
      [0.6, 189],
    ]);
    const { a, b, found } = benches(drops ?? [], nearly ?? []);
    expect([a, b].map(({ fallBacks }) => fallBacks[0]?.resolved)).toEqual([true, false]);
    expect(found.hidden).toEqual([]);
    const { apart } = benches(FALLING, FLAT).found.hidden[0] ?? {};
    checkClose(apart?.drop, 1 - 190.4 / 190, 1e-6);
    checkClose(apart?.difference, 1 - 183 / 190 + 0.4 / 190, 1e-6);
    checkClose(apart?.chance, 2.0808 * 2 * 0.004, 1e-3);
  });

  test("is none where the other bench has not been as far", () => {
    expect(benches(FALLING, STEADY.slice(0, 4)).found.hidden).toEqual([]);
    expect(benches(FALLING, [[0.5, 190]]).found.hidden).toEqual([]);
  });

  test("is none between two ports that are sound", () => {
    expect(benches(STEADY, FLAT).found.hidden).toEqual([]);
  });
});

test("settle times and the time taken stand side by side", () => {
  const timed = (times: readonly number[]): Points =>
    times.map((time, index) => [((index + 1) / 10).toFixed(1), 60 * (index + 1), time] as const);
  const { approaches } = benches(timed([1, 3, 2]), timed([9, 7])).found;
  expect(approaches.first).toEqual({ settle: { least: 1, median: 2, most: 3 }, time: 6 });
  expect(approaches.second).toEqual({ settle: { least: 7, median: 8, most: 9 }, time: 16 });
  expect(benches(STEADY, STEADY).found.approaches.first).toEqual({ settle: undefined, time: undefined });
});

describe("one port on two benches", () => {
  const alike = (lines: readonly string[], bench: "north" | "south" = "south") => {
    const [a, b] = twoRuns({ points: STEADY }, { points: STEADY, lines, bench });
    return isSamePortOnTwoBenches(a.setup, b.setup);
  };

  test("has one stage, cylinder and direction, and was read alike", () => {
    expect(alike([])).toBe(true);
    expect(alike([], "north")).toBe(false);
    expect(alike(["cylinder 2"])).toBe(false);
    expect(alike(["direction blows"])).toBe(false);
    expect(alike(["entry bare"])).toBe(false);
  });
});
