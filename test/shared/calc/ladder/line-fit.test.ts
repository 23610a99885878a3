import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { bentLine, type LinePoint, straightLine } from "../../../../shared/calc/ladder/line-fit.ts";
import { studentTail } from "../../../../shared/calc/student.ts";
import { normalNumbers } from "../../../../shared/calc/trace/noise.ts";
import { rateOf } from "../../../kit/binomial.ts";
import { checkClose } from "../close.ts";

const points = (xs: readonly number[], ys: readonly number[], u = 1): LinePoint[] =>
  xs.map((x, at) => ({ x, y: ys[at] ?? 0, u }));

describe("a straight line", () => {
  test("is that of NIST's Norris data, slope and error", () => {
    // NIST Statistical Reference Datasets, linear regression, Norris (the first twelve pairs are not enough: all 36).
    const xs = [
      0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338,
      447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3,
      229.2, 669.1, 448.9, 0.5,
    ];
    const ys = [
      0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
      448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6,
      228.9, 668.4, 449.2, 0.2,
    ];
    const line = straightLine(points(xs, ys, 1e-3));
    checkClose(line?.slope, 1.00211681802045, 1e-12);
    // Points so certain scatter by more, and the error is theirs.
    checkClose(line?.error, 0.429796848199937e-3, 1e-10);
    expect(line?.widened).toBe(true);
  });

  test("of certain points weighs them: the uncertain one hardly counts", () => {
    const line = straightLine([
      { x: 0, y: 0, u: 0.001 },
      { x: 1, y: 1, u: 0.001 },
      { x: 2, y: 2, u: 0.001 },
      { x: 3, y: 9, u: 1000 },
    ]);
    checkClose(line?.slope, 1, 1e-4);
  });

  test("needs three points and two places", () => {
    expect(straightLine(points([0, 1], [0, 1]))).toBeUndefined();
    expect(straightLine(points([1, 1, 1], [0, 1, 2]))).toBeUndefined();
  });
});

describe("a bent line", () => {
  const xs = [0, 1, 2, 3, 4, 5, 6, 7];

  test("that is bent is found where it bends", () => {
    const normal = normalNumbers(3);
    const bent = bentLine(
      points(
        xs,
        xs.map((x) => 0.5 * x - 0.2 * Math.max(0, x - 4) + 0.005 * normal()),
        0.005,
      ),
    );
    expect(bent?.x).toBe(4);
    expect(bent?.below).toBeCloseTo(0.5, 1);
    expect(bent?.above).toBeCloseTo(0.3, 1);
    expect(bent?.chance).toBeLessThan(0.01);
  });

  test("is seen in straight ones in at most 5 %", () => {
    const TRIALS = 1000;
    let alarms = 0;
    for (let seed = 1; seed <= TRIALS; seed++) {
      const normal = normalNumbers(seed * 271);
      if (
        (bentLine(
          points(
            xs,
            xs.map((x) => 0.5 * x + normal()),
          ),
        )?.chance ?? 1) < 0.05
      )
        alarms++;
    }
    expect(rateOf(alarms, TRIALS).low).toBeLessThanOrEqual(0.05);
    expect(alarms).toBeGreaterThan(0);
  });

  test("needs six points", () => {
    expect(bentLine(points([0, 1, 2, 3, 4], [0, 1, 2, 3, 4]))).toBeUndefined();
  });
});

test.each([
  [2.5, 3],
  [1.2, 9],
  [4.8, 20],
])("the tail of t at %d with %d degrees is half that of F at its square (jstat)", (t, degrees) => {
  checkClose(2 * studentTail(t, degrees), 1 - jstat.centralF.cdf(t * t, 1, degrees), 1e-6);
});
