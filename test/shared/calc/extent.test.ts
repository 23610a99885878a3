import { describe, expect, test } from "vitest";
import { extent } from "../../../shared/calc/extent.ts";

describe("the ends of a list", () => {
  test("are its least and its greatest value, whatever its order", () => {
    expect(extent([3, -1, 2])).toEqual([-1, 3]);
    expect(extent([5])).toEqual([5, 5]);
    expect(extent([])).toEqual([Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]);
  });

  test("are found in a list that is longer than a call may have arguments", () => {
    expect(extent(Array.from({ length: 1_000_000 }, (_, at) => (at * 7919) % 1_000_003))).toEqual([
      0, 1_000_002,
    ]);
  });
});
