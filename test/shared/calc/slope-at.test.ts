import { describe, expect, test } from "vitest";
import { slopeAt } from "../../../shared/calc/slope-at.ts";
import type { RunResult, Station } from "../../../shared/model/result.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { checkClose } from "./close.ts";

const INCH = 0.0254;

const station = (lift: number, flow: number, slope: number): Station => ({
  lift,
  flow,
  slope,
  rows: [],
  uncertainty: 0,
});

describe("the slope of a branch", () => {
  const stations = [station(1, 10, 7), station(2, 14, 5), station(4, 18, 3)];

  test("is a station's own at its lift, and the nearest one's beyond the ends", () => {
    expect([0.5, 1, 2, 4, 9].map((lift) => slopeAt(stations, lift))).toEqual([7, 7, 5, 3, 3]);
  });

  test("is that of the straight line between two stations", () => {
    expect([1.5, 3].map((lift) => slopeAt(stations, lift))).toEqual([4, 2]);
  });

  test("is that of a lone station everywhere, and none without stations", () => {
    expect([0.5, 1, 2].map((lift) => slopeAt([station(1, 10, 7)], lift))).toEqual([7, 7, 7]);
    expect(slopeAt([], 1)).toBe(0);
  });
});

describe("a run that was taken downwards", () => {
  /** Nothing but the set lift is uncertain: 0.01 in on a curve of 500 cfm per inch above 0.3 in and 1000 below. */
  function runOf(...rows: readonly string[]): RunResult {
    return evaluateRun(
      [
        "bench b",
        "shows flow",
        "repeat 0.0001 %",
        "lift-setting 0.01 in",
        "session 2026-03-02",
        "bench b",
        "run r",
        "lift[in] depression[inH2O] flow[cfm]",
        ...rows,
      ].join("\n"),
    );
  }

  const DOWN = [
    "0.5 28.0000 400.0000",
    "0.4 28.0000 350.0000",
    "0.3 28.0000 300.0000",
    "0.2 28.0000 200.0000",
  ];

  const uncertainties = ({ rows }: RunResult) => rows.map(({ uncertainty }) => uncertainty);

  test("has its first row on the way up, the others in stations by rising lift", () => {
    const { rising, falling } = runOf(...DOWN);
    expect(rising.map(({ lift }) => lift / INCH)).toEqual([0.5]);
    expect(falling.map(({ lift }) => Math.round((lift / INCH) * 10))).toEqual([2, 3, 4]);
  });

  test("has the slope of its own branch in each row's uncertainty", () => {
    const [first, ...others] = uncertainties(runOf(...DOWN));
    // By hand, k = 2: 2 · 0.01 in · slope / flow. One-sided at 0.4 (500) and 0.2 (1000), central at 0.3: (350-200)/0.2 = 750.
    for (const [at, expected] of [0.02 * (500 / 350), 0.02 * (750 / 300), 0.02 * (1000 / 200)].entries()) {
      checkClose(others[at], expected, 1e-3);
    }
    // A lone station has no slope.
    expect(first).toBeLessThan(1e-4);
  });

  test("gives rows that take part in no mean the slope of that branch, where there is no other", () => {
    // Void from the first row on: the rows that count are read downwards, and the first of these stands alone again.
    const result = runOf('0.25 28.0000 250.0000 void "slipped"', ...DOWN);
    // On the only station of the way up, which has no slope.
    expect(uncertainties(result)[0]).toBeLessThan(1e-4);
    const port = "port p\nvalve 1 in\nside intake\nrun r\nport p";
    const text = ["bench b", "shows flow", "repeat 0.0001 %", "lift-setting 0.01 in", "session 2026-03-02"];
    const head = "lift[in] depression[inH2O] flow[cfm]";
    const impossible = evaluateRun(
      [
        ...text,
        "bench b",
        port,
        head,
        "0.3 28.0000 900.0000",
        "0.2 28.0000 40.0000",
        "0.1 28.0000 20.0000",
      ].join("\n"),
    );
    // The first row cannot be and is left out, so that nothing is left of the way up; 200 cfm per inch on the way down.
    expect(impossible.rising).toEqual([]);
    checkClose(uncertainties(impossible)[0], (0.02 * 200) / 900, 1e-3);
  });
});
