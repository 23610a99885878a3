import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expanded, type StationTerms, stationsOf } from "../../../shared/calc/stations.ts";
import type { Branch, RowResult, Station } from "../../../shared/model/result.ts";
import { rowResult } from "../../kit/row-result.ts";
import { checkClose } from "./close.ts";

const TERMS: StationTerms = { deviation: 0.005, liftSetting: 0.001, scale: 0 };

function row(lift: number, corrected: number, branch: Branch = "rising", variance = 0): RowResult {
  const flow = { measured: corrected, leak: 0, port: corrected, corrected };
  return rowResult({ lift, flow, branch, variance });
}

/** Lift, flow, number of rows and slope of each station. */
function brief(stations: readonly Station[]): readonly (readonly number[])[] {
  return stations.map(({ lift, flow, rows, slope }) => [lift, flow, rows.length, slope]);
}

describe("the stations of a branch", () => {
  test("average the rows of one lift, arithmetically, and stand by rising lift", () => {
    const rows = [row(0.2, 100), row(0.1, 50), row(0.2, 103), row(0.2, 97)];
    expect(brief(stationsOf("rising", rows, TERMS))).toEqual([
      [0.1, 50, 1, 500],
      [0.2, 100, 3, 500],
    ]);
  });

  test("leave out the other branch, and rows without lift or flow", () => {
    const rows = [
      row(0.1, 50),
      row(0.2, 90, "falling"),
      { ...row(0.3, 140), flow: undefined },
      { ...row(0.3, 140), lift: undefined },
    ];
    expect(brief(stationsOf("rising", rows, TERMS))).toEqual([[0.1, 50, 1, 0]]);
    expect(brief(stationsOf("falling", rows, TERMS))).toEqual([[0.2, 90, 1, 0]]);
    expect(stationsOf("falling", [], TERMS)).toEqual([]);
  });

  test("have the slope of a central difference, one-sided at the ends (worked by hand)", () => {
    const slopes = stationsOf("rising", [row(1, 50), row(2, 90), row(4, 130)], TERMS).map(
      ({ slope }) => slope,
    );
    expect(slopes).toEqual([40, 80 / 3, 20]);
  });
});

describe("the uncertainty of a station (JCGM 100:2008, 5.1.2, worked by hand)", () => {
  test("adds repeatability over the readings, written numbers, lift setting on the slope, and scale", () => {
    // (0.8 %)²/4 + (0.3 %)² + (20 · 0.01/100)² + (0.6 %)², all relative: 16 + 9 + 4 + 36 = 65, in (0.1 %)²
    const terms = { deviation: 0.008, liftSetting: 0.01, scale: 0.006 };
    checkClose(expanded(100, 20, 0.003 ** 2, 4, terms), 2 * Math.sqrt(65) * 1e-3, 1e-12);
  });

  test("of several readings has their mean variance of written numbers, which repeats do not average away", () => {
    const terms = { deviation: 0, liftSetting: 0, scale: 0 };
    const [station] = stationsOf("rising", [row(1, 100, "rising", 4e-6), row(1, 100, "rising", 4e-6)], terms);
    checkClose(station?.uncertainty, 2 * 2e-3, 1e-12);
  });

  test("is finite where no air flows", () => {
    expect(Number.isFinite(expanded(0, 500, 0, 1, TERMS))).toBe(true);
  });
});

describe("laws of averaging", () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 500 })), {
    maxLength: 20,
  });

  test("the order of rows does not matter, beyond rounding", () => {
    fc.assert(
      fc.property(rows, (values) => {
        const there = values.map(([lift, flow]) => row(lift, flow));
        const back = [...there].reverse();
        const flows = (list: readonly RowResult[]) =>
          stationsOf("rising", list, TERMS).map((station) => station.flow);
        const expected = flows(there);
        flows(back).forEach((flow, index) => {
          checkClose(flow, expected[index] ?? Number.NaN, 1e-12);
        });
      }),
    );
  });

  test("taking every reading twice changes no mean, and no reading makes a station worse known", () => {
    fc.assert(
      fc.property(rows, (values) => {
        const once = stationsOf(
          "rising",
          values.map(([lift, flow]) => row(lift, flow)),
          TERMS,
        );
        const twice = stationsOf(
          "rising",
          values.flatMap(([lift, flow]) => [row(lift, flow), row(lift, flow)]),
          TERMS,
        );
        twice.forEach((station, index) => {
          checkClose(station.flow, once[index]?.flow ?? Number.NaN, 1e-12);
          expect(station.uncertainty).toBeLessThanOrEqual((once[index]?.uncertainty ?? 0) * (1 + 1e-12));
        });
      }),
    );
  });
});
