// The machine output of a comparison, against the schema that is published for it.
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { compareReportSchema } from "../../../shared/messages/compare-report.ts";
import { type CompareRun, compareLabels } from "../../../shared/render/compare-input.ts";
import { compareReport } from "../../../shared/render/compare-report.ts";
import { comparedRuns } from "../../../shared/render/compare-table.ts";
import { type RunParts, type TwoRuns, twoRuns } from "../../kit/two-runs.ts";

const isValid = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
  z.toJSONSchema(compareReportSchema),
);

function report(first: RunParts, second: RunParts, options: TwoRuns & { anyway?: boolean } = {}) {
  const [a, b] = twoRuns(first, second, options);
  const side = (result: CompareRun["result"], label: string): CompareRun => ({
    result,
    label,
    file: "a.headnote",
    revision: undefined,
  });
  const input = { baseline: side(a, "r1"), others: [side(b, "r2")], anyway: options.anyway ?? false };
  const made = compareReport(input.baseline, comparedRuns(input));
  expect(isValid(JSON.parse(JSON.stringify(made))), JSON.stringify(isValid.errors)).toBe(true);
  expect(z.parse(compareReportSchema, made)).toEqual(made);
  return made;
}

const curve: RunParts["points"] = [
  [0.1, 60, 1],
  [0.2, 120, 2],
  [0.3, 150, 1],
  [0.4, 142, 3],
];
const flat: RunParts["points"] = [...curve.slice(0, 3), [0.4, 150.2, 9]];

describe("the report of a comparison", () => {
  test.each([
    ["of one bench", curve, flat, "north"],
    ["of two", curve, flat, "south"],
    ["with no lift in common", curve, [[0.9, 200]], "north"],
    ["with no readings at all", [], [], "south"],
    ["with falling rows and voids of flow", [...curve, [0.2, 119]], [...curve, [0.2, 0]], "north"],
  ] as const)("%s is what the schema says", (_, first, second, bench) => {
    report({ points: first }, { points: second, bench });
  });

  test("has the values in the baseline's units and in SI", () => {
    const [entry] = report({ points: curve }, { points: flat }).comparisons;
    const lift = entry?.lifts.at(-1);
    expect(lift?.lift.value).toBeCloseTo(0.4, 9);
    expect(lift?.lift.si).toBeCloseTo(0.4 * 0.0254, 12);
    expect(lift?.baseline?.unit).toBe("cfm");
    expect(lift?.gain?.gain).toBeCloseTo(150.2 / 142 - 1, 6);
    expect(lift?.gain?.resolved).toBe(true);
  });

  test("tells two benches apart, with what one hides", () => {
    const [entry] = report({ points: curve }, { points: flat, bench: "south" }).comparisons;
    expect(entry?.benches?.hidden).toMatchObject([{ resolvedBy: "baseline", isFlatThere: true }]);
    expect(entry?.benches?.approaches.run.settle?.longest).toEqual({ value: 9, unit: "s", si: 9 });
    expect(entry?.differs).toBe(true);
  });

  test("has no gain for runs that were not read alike, unless it is asked for", () => {
    const bare = { points: curve, lines: ["entry bare"] };
    const [refused] = report({ points: curve }, bare).comparisons;
    expect(refused).toMatchObject({ comparable: false, differs: true, mean: null, bands: null });
    expect(refused?.mismatches).toEqual([{ what: "entry", run: "bare", baseline: "clay" }]);
    expect(refused?.lifts.every(({ gain, difference }) => gain === null && difference === null)).toBe(true);
    const [told] = report({ points: curve }, bare, { anyway: true }).comparisons;
    expect(told?.comparable).toBe(false);
    expect(told?.mean?.gain).toBe(0);
  });
});

describe("names of runs in a comparison", () => {
  const run = (id: string, file = "a", revision?: string) => ({ id, file, revision });

  test("are their ids, with as much before them as tells them apart", () => {
    expect(compareLabels([run("r1"), run("r2")])).toEqual(["r1", "r2"]);
    expect(compareLabels([run("r1", "a", "HEAD"), run("r1")])).toEqual(["HEAD:r1", "r1"]);
    expect(compareLabels([run("r1", "a"), run("r1", "b"), run("r2")])).toEqual(["a#r1", "b#r1", "r2"]);
    expect(compareLabels([run("r1"), run("r1")])).toEqual(["a#r1 (1)", "a#r1 (2)"]);
  });
});
