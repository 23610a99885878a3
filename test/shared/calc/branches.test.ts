import { describe, expect, test } from "vitest";
import { branchesOf } from "../../../shared/calc/branches.ts";

const SHORT = { r: "rising", f: "falling" } as const;

/** Checks the branch of each lift, written as `r`, `f` or `-`. */
function checkBranches(lifts: readonly number[], expected: string): void {
  const words = [...expected].map((letter) => (letter === "r" || letter === "f" ? SHORT[letter] : undefined));
  expect(branchesOf(lifts)).toEqual(words);
}

describe("the branch of a row", () => {
  test("is rising for the first row and above the one before, falling below it", () => {
    checkBranches([1, 2, 3, 2, 1], "rrrff");
  });

  test("is that of the row before at the same lift", () => {
    checkBranches([1, 1, 2, 2, 1, 1], "rrrrff");
  });

  test("turns at each change of direction", () => {
    checkBranches([3, 2, 3, 1], "rfrf");
  });

  test("is not known without a lift, and such a row is nobody's row before", () => {
    checkBranches([Number.NaN, 1, Number.NaN, 2, Number.NaN, 2, 1], "-r-r-rf");
  });

  test("of no rows is nothing", () => {
    checkBranches([], "");
  });
});
