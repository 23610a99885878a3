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

  test("of cylinders that are alike stand beyond the noise in 5 % of cases", () => {
    // 800 sets of five readings of one flow, 1 % apart: 200 of 4 000 expected, 3.5 standard deviations are 62 at most
    // (with the correlation of the five taken as whole).
    const normals = seededNormals(7);
    let beyond = 0;
    const lifts = Array.from({ length: 800 }, () => 0);
    const text = Array.from({ length: 5 }, (_, at) =>
      runText(
        `r${at}`,
        lifts.map(() => 100 * (1 + 0.01 * normals.next().value)),
      ),
    ).join("");
    const found = deviationsOf(text);
    for (const { deviation, noise } of found) if (Math.abs(deviation) > noise) beyond++;
    expect(found).toHaveLength(4000);
    expect(beyond).toBeGreaterThan(138);
    expect(beyond).toBeLessThan(262);
  });
});
