import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { chanceOfMarks } from "../../../shared/calc/chance-of-marks.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

/** The binomial tail is the incomplete beta function (Abramowitz and Stegun 26.5.24); jstat has it. */
function binomialTail(marked: number, count: number, each: number): number {
  return jstat.beta.cdf(each, marked, count - marked + 1);
}

describe("chance that so many of some differences pass their limit", () => {
  test("of ten with a limit of 1.96 each, one or more: 1 - 0.95^10", () => {
    checkClose(chanceOfMarks(1, 10, 1.959963985), 1 - 0.95 ** 10, 1e-6);
  });

  test.each([
    [1, 1],
    [2, 10],
    [3, 10],
    [10, 10],
    [40, 1000],
    [60, 1000],
    [900, 20_000],
    [1100, 20_000],
  ])("%d of %d (jstat)", (marked, count) => {
    const each = 2 * jstat.normal.cdf(-1.96, 0, 1);
    checkClose(chanceOfMarks(marked, count, 1.96), binomialTail(marked, count, each), 1e-6);
  });

  test.each([4, 10, 60])(
    "of one whose deviation has %d degrees of freedom: Student's tails (jstat)",
    (nu) => {
      checkClose(chanceOfMarks(1, 1, 2.2, nu), 2 * jstat.studentt.cdf(-2.2, nu), 1e-3);
    },
  );

  test("of several that share an estimate: as simulated", () => {
    const normals = seededNormals(31);
    const next = () => normals.next().value;
    const [count, nu, limit, sweeps] = [8, 6, 2.3, 40_000];
    const hits = [0, 0, 0];
    for (let sweep = 0; sweep < sweeps; sweep++) {
      const squares = Array.from({ length: nu }, () => next() ** 2).reduce((sum, value) => sum + value, 0);
      const beyond = limit * Math.sqrt(squares / nu);
      const marked = Array.from({ length: count }, next).filter((value) => Math.abs(value) > beyond).length;
      for (const least of [1, 2, 3]) if (marked >= least) hits[least - 1] = (hits[least - 1] ?? 0) + 1;
    }
    for (const least of [1, 2, 3]) {
      const share = (hits[least - 1] ?? 0) / sweeps;
      const error = Math.sqrt((share * (1 - share)) / sweeps);
      expect(Math.abs(chanceOfMarks(least, count, limit, nu) - share)).toBeLessThan(4 * error);
    }
  });
});
