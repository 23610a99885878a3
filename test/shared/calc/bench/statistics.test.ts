import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reproducibility } from "../../../../shared/calc/bench/between-days.ts";
import { bandClasses, stationClasses } from "../../../../shared/calc/bench/classes.ts";
import { controlLimits } from "../../../../shared/calc/bench/control-limits.ts";
import { median, quantileOf } from "../../../../shared/calc/median.ts";
import { checkClose } from "../close.ts";
import { seededNormals } from "../seeded-normals.ts";

describe("repeatability and reproducibility (ISO 5725-2; handbook section 11, values by scipy)", () => {
  const level = [
    [249.8, 250.4, 250.1, 249.9],
    [251.9, 252.3, 251.6, 252.0],
    [248.7, 249.3, 249.0, 248.6],
  ];

  test("of three rigs with four readings each", () => {
    const found = reproducibility([level]);
    checkClose(Math.sqrt(found?.within ?? 0), 0.2905933, 1e-6);
    checkClose(Math.sqrt(found?.between ?? 0), 1.5334239, 1e-7);
    checkClose(Math.sqrt(found?.total ?? 0), 1.5607156, 1e-7);
  });

  test("of several levels alike is that of each", () => {
    const once = reproducibility([level]);
    const twice = reproducibility([level, level.map((cell) => cell.map((value) => value + 100))]);
    checkClose(twice?.within, once?.within ?? 0, 1e-9);
    checkClose(twice?.between, once?.between ?? 0, 1e-9);
  });

  test("with single readings stands on a repeatability that is known: half the squared difference less it", () => {
    const found = reproducibility([[[10], [12]]], 0.5);
    checkClose(found?.between, 2 - 0.5, 1e-12);
    expect(reproducibility([[[10], [12]]])).toBeUndefined();
    expect(reproducibility([[[10, 12]]])).toBeUndefined();
  });

  test("never gives sessions less than nothing, and finds what cells of unequal size were made with", () => {
    expect(
      reproducibility([
        [
          [10, 14],
          [11, 13],
        ],
      ])?.between,
    ).toBe(0);
    const normals = seededNormals(11);
    const next = () => normals.next().value;
    const levels = Array.from({ length: 400 }, () =>
      [1, 2, 5, 3].map((count) => {
        const session = 0.8 * next();
        return Array.from({ length: count }, () => 100 + session + 0.4 * next());
      }),
    );
    const found = reproducibility(levels);
    expect(Math.sqrt(found?.within ?? 0)).toBeCloseTo(0.4, 1);
    expect(Math.abs(Math.sqrt(found?.between ?? 0) - 0.8)).toBeLessThan(0.05);
  });
});

test("control limits of the individuals of NIST/SEMATECH e-Handbook 6.3.2.2: 45.8159 to 55.8041 about 50.81", () => {
  const limits = controlLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
  checkClose(limits?.centre, 50.81, 1e-9);
  checkClose(limits?.movingRange, 1.8778, 1e-4);
  checkClose(limits?.low, 45.8159, 5e-5);
  checkClose(limits?.high, 55.8041, 5e-5);
  expect(controlLimits([1])).toBeUndefined();
});

test("quantiles are those of Hyndman and Fan's definition 7, as spreadsheets have them", () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 2, 3])).toBe(2.5);
  expect(quantileOf([1, 2, 3, 4, 5], 0.95)).toBeCloseTo(4.8, 12);
  expect(median([])).toBeUndefined();
});

describe("classes", () => {
  test("of few stations are the stations, of many are centred on multiples, of flow begin at them", () => {
    const ends = (classes: ReturnType<typeof stationClasses<number>>) =>
      classes.map(({ from, to }) => [Number(from.toFixed(6)), Number(to.toFixed(6))]);
    expect(ends(stationClasses([0.1, 0.3, 0.1, 0.1 + 1e-12], (x) => x))).toEqual([
      [0.1, 0.1],
      [0.3, 0.3],
    ]);
    const many = Array.from({ length: 14 }, (_, index) => 0.05 * (index + 1) + (index === 3 ? 0.01 : 0));
    expect(ends(stationClasses(many, (x) => x)).slice(0, 2)).toEqual([
      [0.025, 0.075],
      [0.075, 0.125],
    ]);
    expect(ends(bandClasses([12, 95, 210], (x) => x))).toEqual([
      [0, 50],
      [50, 100],
      [200, 250],
    ]);
  });

  test("hold every number once, between their ends", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ noNaN: false }), { maxLength: 40 }), (values) => {
        for (const classes of [stationClasses(values, (x) => x), bandClasses(values, (x) => x)]) {
          const all = classes.flatMap(({ members }) => members);
          expect(all).toHaveLength(values.filter(Number.isFinite).length);
          for (const { from, to } of classes) expect(from).toBeLessThanOrEqual(to);
        }
      }),
    );
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1e4, noNaN: true }), { maxLength: 60 }), (values) => {
        for (const { from, to, members } of bandClasses(values, (x) => x)) {
          const room = 1e-5 * Math.max(1, to - from);
          for (const value of members) {
            expect(value).toBeGreaterThanOrEqual(from - room);
            expect(value).toBeLessThanOrEqual(to + room);
          }
        }
      }),
    );
  });
});
