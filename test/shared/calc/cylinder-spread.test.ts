import { describe, expect, test } from "vitest";
import { cylinderSpreads } from "../../../shared/calc/cylinder-spread.ts";
import { evaluateText } from "../../kit/evaluate.ts";
import { checkClose } from "./close.ts";

/** Runs by cylinder and rows; the bench repeats to 0.5 %. */
function spreads(...runs: readonly (readonly [cylinder: number, rows: string])[]) {
  const texts = runs.map(
    ([cylinder, rows], index) =>
      `run r${index}\n  cylinder ${cylinder}\n  lift[in]  depression[inH2O]  flow[cfm]\n${rows}\n`,
  );
  const shop = "bench b\n  shows flow\n  repeat 0.5 %\nsession 2026-03-02\n  bench b\n";
  return cylinderSpreads(evaluateText(shop + texts.join("")).runs);
}

describe("cylinders at one lift", () => {
  test("two are apart by their difference over their mean, by chance up to 1.96 s sqrt(1/n1 + 1/n2)", () => {
    const [found] = spreads([1, "0.3 28.0 196.0"], [2, "0.3 28.0 204.0\n0.3 28.0 204.0"]);
    checkClose(found?.difference, 8 / 200, 1e-9);
    // 1.95996 · 0.5 % · sqrt(1 + 1/2), by hand.
    checkClose(found?.chance, 0.0120023, 1e-4);
    expect([found?.lowest.cylinder, found?.highest.cylinder]).toEqual([1, 2]);
  });

  // Studentized range at 5 % with infinite degrees of freedom, printed tables: 3.31, 3.63, 4.29 for 3, 4 and 8.
  test.each([
    [3, 3.31],
    [4, 3.63],
    [8, 4.29],
  ])("the furthest two of %i are told apart by the range of as many", (count, range) => {
    const all = Array.from({ length: count }, (_, index) => [index + 1, "0.3 28.0 200.0"] as const);
    const [found] = spreads(...all);
    checkClose(found?.chance, range * 0.005, 2e-3);
    expect(found?.cylinders).toBe(count);
  });

  test("are averaged over all runs of a cylinder, and stand by lift", () => {
    const found = spreads(
      [1, "0.4 28.0 230.0"],
      [1, "0.3 28.0 200.0"],
      [2, "0.3 28.0 202.0\n0.4 28.0 230.0"],
      [1, "0.3 28.0 206.0"],
    );
    expect(found.map(({ lift }) => Math.round(lift * 1e5))).toEqual([762, 1016]);
    checkClose(found[0]?.highest.flow && found[0].highest.flow / found[0].lowest.flow, 203 / 202, 1e-9);
    expect(found[0]?.highest).toMatchObject({ cylinder: 1, readings: 2 });
  });

  test("one alone is apart from nothing", () => {
    expect(spreads([1, "0.3 28.0 200.0"], [1, "0.3 28.0 150.0"], [2, "0.4 28.0 200.0"])).toEqual([]);
  });
});
