// Labels on generated pictures: they never collide, clip or cover a reading, from a phone's width to a poster's.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { RunResult } from "../../../shared/model/result.ts";
import { chartSpec } from "../../../shared/render/chart.ts";
import { LABEL_SIZE } from "../../../shared/render/chart-layers.ts";
import {
  charted,
  chartOf,
  checkLabelsApart,
  dataOf,
  panelsOf,
  runsOf,
  runText,
  textsOf,
} from "../../kit/chart.ts";

const width = fc.integer({ min: 320, max: 1600 });
const label = fc.string({ maxLength: 60 });
const WORDS = ["off-target", "repeats-disagree", "implausible-cd", "fall-back-not-resolved"] as const;

/** Flows of a sweep: what a port may do, and what it cannot. */
const flows = fc.oneof(
  fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 12 }),
  fc
    .tuple(
      fc.integer({ min: 3, max: 12 }),
      fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 12, maxLength: 12 }),
    )
    .map(([count, noise]) =>
      Array.from({ length: count }, (_, at) => 230 * (1 - Math.exp(-(at + 1) / 3)) + (noise[at] ?? 0)).map(
        Math.round,
      ),
    ),
);
const expectation = fc.option(
  fc.record({
    flow: fc.integer({ min: 1, max: 300 }),
    lift: fc.integer({ min: 1, max: 12 }),
    within: fc.integer({ min: 1, max: 20 }),
  }),
);
const run = fc.record({
  flows,
  label,
  expectation,
  comesDown: fc.boolean(),
  cylinder: fc.option(fc.integer({ min: 1, max: 99 })),
});

interface Given {
  readonly flows: readonly number[];
  readonly expectation: { readonly flow: number; readonly lift: number; readonly within: number } | null;
  readonly comesDown: boolean;
}

function written(id: string, { flows: up, expectation: goal, comesDown }: Given): string {
  const lines =
    goal === null ? "" : `  expect flow ${goal.flow} cfm at ${goal.lift / 10} in within ${goal.within} %\n`;
  const down = up.map((flow, at) => `  ${((at + 1) / 10).toFixed(3)}  28.0  ${flow}\n`).reverse();
  return `${runText(id, up, lines)}${comesDown ? down.slice(1).join("") : ""}`;
}

/** Every reading flagged with as many words as its number lets through. */
function flagged(result: RunResult, some: number): ReadonlyMap<RunResult["rows"][number], readonly string[]> {
  return new Map(
    result.rows.flatMap((row, at) =>
      (at + some) % 3 === 0 ? [] : [[row, WORDS.slice(0, 1 + ((at + some) % 4))] as const],
    ),
  );
}

describe("labels never collide, clip or cover a point", () => {
  function checkAll(
    all: readonly (Given & { readonly label: string })[],
    role: "main" | "compared" | "baseline",
    outer: number,
  ) {
    const results = runsOf(all.map((entry, at) => written(`r${at}`, entry)).join(""));
    const runs = results.map((result, at) =>
      charted(result, at === 0 ? (role === "baseline" ? "main" : role) : role, {
        label: all[at]?.label ?? "",
        findings: flagged(result, at),
      }),
    );
    checkLabelsApart(chartSpec(runs, { width: outer }), outer);
  }

  test.each(["main", "compared", "baseline"] as const)("of runs that are %s", (role) => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 10 }), width, (all, outer) =>
        checkAll(all, role, outer),
      ),
      { numRuns: 50 },
    );
  });

  test("of one run, at every width", () => {
    const one = {
      flows: [58, 126, 187, 230, 226, 225, 226],
      expectation: { flow: 230, lift: 4, within: 3 },
      comesDown: true,
      label: "as cast",
    };
    for (let outer = 320; outer <= 1600; outer += 16) checkAll([one], "main", outer);
  });
});

describe("labels keep to that", () => {
  test.each([
    ["of one point", ["58.4"]],
    ["of nothing but void points", ['58.4 void "belt"', '125.6 void "belt"', '187.4 void "belt"']],
    ["of values out by a million", [58.4, 125.6, 187.4e6, 229.8, 243.1, 0.00025]],
    ["of values out by a million in every other row", [58.4, 125.6e6, 187.4, 229.8e6, 243.1, 250e6]],
    ["of zeros", [0, 0, 0]],
    ["of five thousand points", Array.from({ length: 5000 }, (_, at) => (at * 250) / 5000)],
  ])("%s, all flagged", (_, rows) => {
    const written = rows.map((row) => (typeof row === "number" ? row.toFixed(5) : row));
    const [result] = runsOf(runText("r", written));
    if (result === undefined) throw new Error("one run");
    for (const outer of [320, 1600]) {
      const spec = chartSpec([charted(result, "main", { findings: flagged(result, 1) })], { width: outer });
      expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
      checkLabelsApart(spec, outer);
    }
  });
});

test("the level of an onset strikes through no label", () => {
  const rows = ["0.350 28.0 174", "0.400 28.0 187", "0.450 28.0 194.4", "0.500 28.0 189", "0.600 28.0 188"];
  const back = ["0.500 28.0 189", "0.450 28.0 184", "0.400 28.0 180"];
  const [result] = runsOf(
    `run r\n  lift[in]  depression[inH2O]  flow[cfm]\n${[...rows, ...back].join("\n")}\n`,
  );
  if (result === undefined) throw new Error("one run");
  const findings = new Map(result.rows.slice(6).map((row) => [row, ["direction-dependent"]]));
  const spec = chartSpec([charted(result, "main", { findings })]);
  const [panel] = panelsOf(spec);
  const [low = 0, high = 0] = panel?.encoding.y.scale.domain ?? [];
  const label = dataOf(spec, "labels").find(({ text }) => text === "lift coming down");
  const level = dataOf(spec, "marks").find(({ y, y2 }) => y === y2 && Number(y) > 190);
  const apart = ((Number(label?.["y"]) - Number(level?.["y"])) / (high - low)) * (panel?.height ?? 0);
  expect(Math.abs(apart)).toBeGreaterThan(LABEL_SIZE / 2);
});

test("where there is no room for the words, more runs are a number", () => {
  const many = Array.from({ length: 60 }, (_, at) => runText(`c${at}`, [50 + at / 10, 120])).join("");
  const spec = chartOf(many, { width: 320 });
  expect(textsOf(spec)).toContainEqual(expect.stringMatching(/^\+\d+$/));
  checkLabelsApart(spec, 320);
});

test("labels that do not all fit are counted", () => {
  const many = Array.from({ length: 60 }, (_, at) => runText(`c${at}`, [50 + at / 10, 120])).join("");
  const spec = chartOf(many);
  expect(textsOf(spec)).toContainEqual(expect.stringMatching(/^and \d+ more$/));
  checkLabelsApart(spec, 760);
});
