import jstat from "jstat";
import { diag, inv, lusolve, multiply, transpose } from "mathjs";
import { describe, expect, test } from "vitest";
import { bentLine, type LinePoint, straightLine } from "../../../../shared/calc/ladder/line-fit.ts";
import { studentTail } from "../../../../shared/calc/student.ts";
import { normalNumbers } from "../../../../shared/calc/trace/noise.ts";
import { rateOf } from "../../../kit/binomial.ts";
import { checkClose } from "../close.ts";

const points = (xs: readonly number[], ys: readonly number[], u = 1): LinePoint[] =>
  xs.map((x, at) => ({ x, y: ys[at] ?? 0, u }));

/** Least squares of columns by their normal equations: parameters, and the sum of the squares left over. */
function fitted(design: readonly (readonly number[])[], ys: readonly number[]) {
  const rows = design.map((row) => [...row]);
  const solved = lusolve(multiply(transpose(rows), rows), multiply(transpose(rows), [...ys]));
  const parameters = (solved as unknown as number[][]).map(([value = 0]) => value);
  const left = ys.map(
    (y, at) => y - (rows[at] ?? []).reduce((sum, x, j) => sum + x * (parameters[j] ?? 0), 0),
  );
  return { parameters, sum: left.reduce((sum, value) => sum + value ** 2, 0) };
}

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

  test("of unequally certain points has the slope and the error of the normal equations (mathjs)", () => {
    const normal = normalNumbers(11);
    const ladder = Array.from({ length: 9 }, (_, at) => {
      const u = 0.002 * (1 + (at % 4));
      const x = Math.log(6 + 3 * at);
      return { x, y: 0.49 * x + 1 + 0.5 * u * normal(), u };
    });
    const design = ladder.map(({ x }) => [1, x]);
    const weights = diag(ladder.map(({ u }) => 1 / u ** 2));
    const inverse = inv(multiply(multiply(transpose(design), weights), design)) as unknown as number[][];
    const right = multiply(
      multiply(transpose(design), weights),
      ladder.map(({ y }) => y),
    ) as unknown as number[];
    const slope = (inverse[1]?.[0] ?? 0) * (right[0] ?? 0) + (inverse[1]?.[1] ?? 0) * (right[1] ?? 0);
    const line = straightLine(ladder);
    expect(line?.widened).toBe(false);
    checkClose(line?.slope, slope, 1e-9);
    checkClose(line?.error, Math.sqrt(inverse[1]?.[1] ?? 0), 1e-9);
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

  test("has the lines and the F of the two models by their normal equations (mathjs, jstat)", () => {
    const normal = normalNumbers(7);
    const ys = xs.map((x) => 0.5 * x - 0.1 * Math.max(0, x - 3) + 0.05 * normal());
    const bent = bentLine(points(xs, ys, 1e-4));
    const straight = fitted(
      xs.map((x) => [1, x]),
      ys,
    );
    const kinked = fitted(
      xs.map((x) => [1, x, Math.max(0, x - (bent?.x ?? 0))]),
      ys,
    );
    checkClose(bent?.below, kinked.parameters[1] ?? 0, 1e-9);
    checkClose(bent?.above, (kinked.parameters[1] ?? 0) + (kinked.parameters[2] ?? 0), 1e-9);
    const degrees = xs.length - 3;
    const f = (straight.sum - kinked.sum) / (kinked.sum / degrees);
    // Places with two points on each side: 2 to 5.
    checkClose(bent?.chance, 4 * (1 - jstat.centralF.cdf(f, 1, degrees)), 1e-6);
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

  test("is looked for at some of very many places", () => {
    const xs = Array.from({ length: 5000 }, (_, at) => at / 1000);
    const bent = bentLine(
      points(
        xs,
        xs.map((x) => x - 0.5 * Math.max(0, x - 3)),
        1e-6,
      ),
    );
    // Every 25th of the places is one.
    expect(Math.abs((bent?.x ?? 0) - 3)).toBeLessThanOrEqual(0.025);
    checkClose(bent?.below, 1, 1e-2);
    checkClose(bent?.above, 0.5, 1e-2);
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
