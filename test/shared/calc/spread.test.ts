import { describe, expect, test } from "vitest";
import { deviations } from "../../../shared/calc/spread.ts";
import { evaluateText } from "../../kit/evaluate.ts";
import { seededNormals } from "./seeded-normals.ts";

const BENCH = "bench b\n  shows  flow\n  repeat  1 %\nbench c\n  shows flow\n  repeat 1 %\n";

function runText(id: string, flows: readonly number[], bench = "b"): string {
  const rows = flows.map((flow, at) => `  ${(at + 1) / 10}  28  ${flow.toFixed(4)}`).join("\n");
  return `run ${id}\n  bench ${bench}\n  lift[in]  depression[inH2O]  flow[cfm]\n${rows}\n`;
}

function deviationsOf(text: string) {
  return deviations(evaluateText(BENCH + text).runs);
}

describe("deviations", () => {
  test("are taken from the mean at each lift that all runs have", () => {
    const found = deviationsOf(runText("a", [99, 200]) + runText("b", [101, 200, 250]));
    expect(found.map(({ deviation }) => deviation)).toEqual(
      [-0.01, 0.01, 0, 0].map((value) => expect.closeTo(value, 9)),
    );
  });

  test("are none between benches, quotes, or for one run alone", () => {
    expect(deviationsOf(runText("a", [99]))).toEqual([]);
    expect(deviationsOf(runText("a", [99]) + runText("b", [99], "c"))).toEqual([]);
    const quoted = runText("b", [99]).replace("bench b", "bench b\n  quote 10 inH2O");
    expect(deviationsOf(runText("a", [99]) + quoted)).toEqual([]);
  });

  test("of two cylinders have the noise of their difference: half of 2.772 standard deviations", () => {
    const [first] = deviationsOf(runText("a", [99, 200]) + runText("b", [101, 200]));
    expect(first?.noise).toBeCloseTo(0.01386, 5);
  });

  test("of five cylinders that are alike fill more than the band in 5 % of cases", () => {
    // 800 sets of five readings of one flow, 1 % apart: 40 are expected, four standard deviations are 25.
    const normals = seededNormals(7);
    const lifts = Array.from({ length: 800 }, () => 0);
    const flows = () => lifts.map(() => 100 * (1 + 0.01 * normals.next().value));
    const text = Array.from({ length: 5 }, (_, at) => runText(`r${at}`, flows())).join("");
    const sets = Map.groupBy(deviationsOf(text), ({ station }) => Math.round(station.lift * 1e6));
    expect(sets.size).toBe(800);
    const wide = [...sets.values()].filter((set) => {
      const values = set.map(({ deviation }) => deviation);
      return Math.max(...values) - Math.min(...values) > 2 * (set[0]?.noise ?? 0);
    }).length;
    expect(wide).toBeGreaterThan(15);
    expect(wide).toBeLessThan(65);
  });
});
