import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { flatDropQuantile, studentFlatDropQuantile } from "../../../shared/calc/flat-drop.ts";
import { normalCdf, normalPdf, normalQuantile } from "../../../shared/calc/normal.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

/** Share of simulated flat curves whose largest drop stays within the threshold (in units of one difference). */
function simulate(count: number, threshold: number, sweeps: number): number {
  const normals = seededNormals(count);
  let within = 0;
  for (let sweep = 0; sweep < sweeps; sweep += 1) {
    let highest = -Infinity;
    let drop = 0;
    for (let station = 0; station < count; station += 1) {
      const value = normals.next().value;
      highest = Math.max(highest, value);
      drop = Math.max(drop, highest - value);
    }
    if (drop <= threshold * Math.SQRT2) within += 1;
  }
  return within / sweeps;
}

/** Chance that the range of `count` standard normals is at most `range`. */
function chanceOfRange(count: number, range: number): number {
  let sum = 0;
  for (let x = -8; x <= 8; x += 0.05)
    sum += normalPdf(x) * (normalCdf(x + range) - normalCdf(x)) ** (count - 1);
  return count * 0.05 * sum;
}

/**
 * Chance of no drop beyond the threshold by another way: the generating function of the recursion on the running
 * maximum is the exponential of that of the chances R of the range, so k P(k) = sum over n of R(n) P(k - n).
 */
function chanceWithoutDrop(count: number, threshold: number): number {
  const ranges = Array.from({ length: count }, (_, index) => chanceOfRange(index + 1, threshold));
  const chances = [1];
  for (let k = 1; k <= count; k += 1) {
    const sum = chances.reduce((total, chance, index) => total + chance * (ranges[k - index - 1] ?? 0), 0);
    chances.push(sum / k);
  }
  return chances.at(-1) ?? 0;
}

describe("largest drop of a flat curve", () => {
  test.each([
    [2, 1.2816, 1.6449, 2.3264],
    [3, 1.7614, 2.0808, 2.6932],
    [4, 2.031, 2.3294, 2.9072],
    [5, 2.217, 2.5022, 3.0576],
    [6, 2.3581, 2.6339, 3.1731],
    [8, 2.5654, 2.8281, 3.3446],
    [10, 2.7157, 2.9694, 3.4704],
    [12, 2.8329, 3.0799, 3.5693],
  ])("of %d stations (derived, computed apart with numpy)", (count, at90, at95, at99) => {
    checkClose(flatDropQuantile(count, 0.9), at90, 1e-4);
    checkClose(flatDropQuantile(count), at95, 1e-4);
    checkClose(flatDropQuantile(count, 0.99), at99, 1e-4);
  });

  test("of two stations is the one-sided normal point at any level", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 0.999, noNaN: true }), (level) => {
        expect(Math.abs((flatDropQuantile(2, level) ?? 0) - (normalQuantile(level) ?? 1))).toBeLessThan(1e-6);
      }),
    );
  });

  test.each([2, 3, 5, 12, 60, 200])("of %d stations has its chance by way of the range", (count) => {
    for (const level of [0.9, 0.95, 0.99]) {
      const threshold = (flatDropQuantile(count, level) ?? 0) * Math.SQRT2;
      checkClose(1 - chanceWithoutDrop(count, threshold), 1 - level, 2e-5);
    }
  });

  test.each([257, 300, 362, 724])(
    "of %d stations, between powers of two, errs by little and on the safe side",
    (count) => {
      for (const level of [0.9, 0.95, 0.99]) {
        const threshold = (flatDropQuantile(count, level) ?? 0) * Math.SQRT2;
        const share = (1 - chanceWithoutDrop(count, threshold)) / (1 - level);
        expect(share).toBeLessThan(1 + 2e-5);
        expect(share).toBeGreaterThan(0.995);
      }
    },
  );

  test.each([3, 6, 12, 40])(
    "of %d stations stays within its quantile as often in simulated sweeps as it should",
    (count) => {
      const within = simulate(count, flatDropQuantile(count) ?? 0, 20_000);
      // Four standard errors of a share of 0.95 in 20 000.
      expect(Math.abs(within - 0.95)).toBeLessThan(0.0062);
    },
  );

  test("grows with stations and with level, and less than the chances of all pairs allow", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 300 }), fc.constantFrom(0.9, 0.95, 0.99), (count, level) => {
        const drop = flatDropQuantile(count, level) ?? 0;
        const pairs = (count * (count - 1)) / 2;
        expect(flatDropQuantile(count + 1, level)).toBeGreaterThan(drop);
        expect(flatDropQuantile(count, level + 0.005)).toBeGreaterThan(drop);
        expect(drop).toBeLessThanOrEqual((normalQuantile(1 - (1 - level) / pairs) ?? 0) + 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  test("is not computed for fewer than two stations, parts of one, or a level out of range", () => {
    expect(flatDropQuantile(1)).toBeUndefined();
    expect(flatDropQuantile(2.5)).toBeUndefined();
    expect(flatDropQuantile(Infinity)).toBeUndefined();
    expect(flatDropQuantile(5, 1)).toBeUndefined();
    expect(flatDropQuantile(5, 0.4)).toBeUndefined();
  });
});

describe("with a standard deviation that is itself estimated", () => {
  test.each([4, 7, 12, 40, 1000])(
    "two readings differ as Student has it, at %d degrees of freedom (jstat)",
    (nu) => {
      checkClose(studentFlatDropQuantile(2, nu), jstat.studentt.inv(0.95, nu), 1e-4);
      checkClose(studentFlatDropQuantile(2, nu, 0.99), jstat.studentt.inv(0.99, nu), 1e-3);
    },
  );

  test.each([
    [3, 4],
    [6, 4],
    [6, 8],
    [12, 4],
    [12, 20],
  ])("%d flat stations at %d degrees of freedom drop further in 5 %% of sweeps, not in more", (count, nu) => {
    const sweeps = 40_000;
    const threshold = studentFlatDropQuantile(count, nu) ?? Number.NaN;
    const normals = seededNormals(1000 * count + nu);
    let further = 0;
    for (let sweep = 0; sweep < sweeps; sweep += 1) {
      let squares = 0;
      for (let i = 0; i < nu; i += 1) squares += normals.next().value ** 2;
      let highest = -Infinity;
      let drop = 0;
      for (let station = 0; station < count; station += 1) {
        const value = normals.next().value;
        highest = Math.max(highest, value);
        drop = Math.max(drop, highest - value);
      }
      if (drop > threshold * Math.SQRT2 * Math.sqrt(squares / nu)) further += 1;
    }
    // Four standard deviations of a share of 5 %.
    expect(Math.abs(further / sweeps - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / sweeps));
  });

  test("is never less than with a known one, comes to it, and stays on the safe side for very many stations", () => {
    for (const count of [2, 5, 11, 64]) {
      const known = flatDropQuantile(count) ?? Number.NaN;
      let before = Number.POSITIVE_INFINITY;
      for (const nu of [4, 6, 10, 30, 200, 1e6]) {
        const limit = studentFlatDropQuantile(count, nu) ?? Number.NaN;
        expect(limit).toBeLessThan(before);
        expect(limit).toBeGreaterThan(known);
        before = limit;
      }
      checkClose(before, known, 1e-4);
    }
    expect(studentFlatDropQuantile(65, 5)).toBeGreaterThan(studentFlatDropQuantile(64, 5) ?? Number.NaN);
  });

  test("is not asked for what it does not know", () => {
    for (const [count, nu] of [
      [1, 10],
      [2.5, 10],
      [5, 3],
      [5, Number.NaN],
    ] as const) {
      expect(studentFlatDropQuantile(count, nu)).toBeUndefined();
    }
  });
});
