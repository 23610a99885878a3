import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hysteresis } from "../../../shared/calc/hysteresis.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { checkClose } from "./close.ts";

type Point = readonly [lift: number, flow: number];

function loop(points: readonly Point[], { bench = "repeat 0.4 %", unit = "cfm", factor = 1 } = {}) {
  const rows = points.map(([lift, flow]) => `${lift} 28 ${(flow * factor).toFixed(4)}`);
  return hysteresis(
    evaluateRun(`headnote 1
bench b
  shows flow
  ${bench}
session 2026-03-02
  bench b
  target 28 inH2O
run r
  lift[mm] depression[inH2O] flow[${unit}]
  ${rows.join("\n  ")}
`),
  );
}

const summary = (points: readonly Point[]) =>
  loop(points).map(({ lift, resolved }) => [Math.round(lift * 1000), resolved]);

describe("flow on the way down beside flow on the way up", () => {
  test("differs by chance by 1.96 s sqrt(2) at most: 1.109 % at 0.4 % (handbook, section 11)", () => {
    const at = (flow: number) =>
      loop([
        [2, 100],
        [4, 150],
        [2, flow],
        [1, 50],
      ]);
    checkClose(at(101)[0]?.chance, 1.96 * Math.SQRT2 * 0.004, 1e-12);
    checkClose(at(101)[0]?.difference, 0.01, 1e-9);
    expect(at(101.1)[0]?.resolved).toBe(false);
    expect(at(101.12)[0]?.resolved).toBe(true);
    expect(at(98.88)[0]?.resolved).toBe(true);
  });

  test("counts the readings of both directions", () => {
    // 1.96 · 0.4 % · sqrt(1/2 + 1) = 0.9602 %, by hand.
    const [two] = loop([
      [2, 100],
      [2, 100],
      [4, 150],
      [2, 101],
      [1, 50],
    ]);
    checkClose(two?.chance, 0.009602, 1e-4);
    expect(two?.resolved).toBe(true);
  });

  test("is compared at the lifts that both have", () => {
    expect(
      summary([
        [1, 50],
        [2, 100],
        [4, 150],
        [3, 125],
        [2, 90],
        [0.5, 25],
      ]),
    ).toEqual([[2, true]]);
    expect(
      summary([
        [1, 50],
        [2, 100],
        [4, 150],
      ]),
    ).toEqual([]);
  });

  test("leaves a last row that returns to the first lift to the drift", () => {
    expect(
      summary([
        [1, 50],
        [2, 100],
        [4, 150],
        [2, 100],
        [1, 60],
      ]),
    ).toEqual([[2, false]]);
    // Of two readings at the last lift only the last is the return.
    expect(
      summary([
        [1, 50],
        [2, 100],
        [4, 150],
        [1, 60],
        [1, 70],
      ]),
    ).toEqual([[1, true]]);
  });

  test("is judged more widely where the repeatability is pooled from 4 degrees of freedom (2.1318/1.6449)", () => {
    const cells: Point[] = [1, 2, 3, 4].flatMap((lift): Point[] => [
      [lift, 100 * lift],
      [lift, 101 * lift],
    ]);
    const [two] = loop([...cells, [3, 300], [0.5, 40]], { bench: "settle 1 s" });
    // Each pair's deviation is 0.5/100.5 sqrt(2) = 0.7036 %, by hand.
    checkClose(two?.chance, 1.96 * 0.007036 * Math.sqrt(1.5) * (2.1318 / 1.6449), 1e-3);
  });

  test("does not depend on the unit of flow", () => {
    const flow = fc.integer({ min: 90, max: 110 });
    fc.assert(
      fc.property(fc.tuple(flow, flow, flow), ([up, down, top]) => {
        const points: Point[] = [
          [1, 50],
          [2, up],
          [3, 120 + top / 10],
          [2, down],
          [0.5, 20],
        ];
        const metric = loop(points, { unit: "m3/h", factor: 1.699010795 });
        for (const [index, two] of loop(points).entries()) {
          expect(Math.abs(two.difference - (metric[index]?.difference ?? 1))).toBeLessThan(1e-5);
        }
      }),
    );
  });
});
