import { describe, expect, test } from "vitest";
import { baselines } from "../../server/service/baseline.ts";
import { codeLenses } from "../../server/service/code-lens.ts";
import { open } from "../kit/service.ts";

const HEAD = "lift[in]  depression[inH2O]  flow[cfm]";

/** The lenses of the first file of a fixture: where they stand, and what they say. */
function lensesOf(fixture: string) {
  const { analysis, analyse } = open(fixture);
  const analyses = new Map(analysis.scope.files.slice(1).map(({ path }) => [path, analyse(path)]));
  return codeLenses(analysis, baselines(analysis, analyses));
}

const titles = (fixture: string) => lensesOf(fixture).map(({ line, title }) => `${line} ${title}`);

/** Run `is` over run `was`, from the line 7 and 10 of the text on. */
const compared = (was: string, is: string, own = "") => `headnote 1
bench b
  shows flow
  repeat 0.5 %
session 2026-03-02
  bench b

run was
  ${HEAD}
  ${was}
run is
  baseline was
  ${own}
  ${HEAD}
  ${is}
`;

describe("above a trace, a ladder and a map", () => {
  test("stands the way to its picture", () => {
    const text = `${compared("0.100 28.0 100.0", "0.100 28.0 110.0")}ladder 0.100 in of was
  depression[inH2O]  flow[cfm]
  10.0  60.0
map "at the neck" of is
  x[mm]  y[mm]  velocity[m/s]
  1  1  90
`;
    const pictures = lensesOf(text).filter(({ kind }) => kind === "picture");
    expect(pictures).toEqual([
      { kind: "picture", line: 15, title: "Show ladder", block: "ladder 0.100 in of was" },
      { kind: "picture", line: 18, title: "Show map", block: "map of is: at the neck" },
    ]);
  });
});

describe("above a run", () => {
  test("stands its curve, and with a baseline the gain of the mean over it", () => {
    const rows = compared("0.100 28.0 100.0\n  0.200 28.0 200.0", "0.100 28.0 110.0\n  0.200 28.0 206.0");
    expect(titles(rows)).toEqual([
      "7 Show curve",
      "11 Show curve",
      "11 +5.3 % mean over was, over lift 0.100 to 0.200 in",
    ]);
  });

  test("a gain that the bench could have made up is called noise", () => {
    expect(titles(compared("0.300 28.0 200.0", "0.300 28.0 202.7")).at(-1)).toBe(
      "10 +1.4 % gain over was, at 0.300 in (noise)",
    );
    expect(titles(compared("0.300 28.0 200.0", "0.300 28.0 197.2")).at(-1)).toBe(
      "10 -1.4 % gain over was, at 0.300 in",
    );
  });

  test("a baseline without anything in common is named all the same", () => {
    expect(titles(compared("0.300 28.0 200.0", "0.400 28.0 210.0")).at(-1)).toBe("10 Baseline was");
    expect(titles(compared("0.300 28.0 200.0", "0.300 28.0 210.0", "quote 25 inH2O")).at(-1)).toBe(
      "10 Baseline was (not comparable)",
    );
  });

  test("the baseline leads to its block, also in an included file", () => {
    const [, lens] = lensesOf(`headnote 1
include "before.headnote"
run is
  baseline was
  ${HEAD}
  0.300 28.0 210.0
#- before.headnote
headnote 1

run was
  ${HEAD}
  0.300 28.0 200.0
`);
    expect(lens).toMatchObject({ kind: "baseline", line: 2, baseline: { start: 2 } });
    expect(lens?.kind === "baseline" && lens.baseline.path).toMatch(/before\.headnote$/);
  });

  test("a baseline that is not found, or is the run itself, is not offered", () => {
    expect(titles(compared("", "").replace("baseline was", "baseline nothing"))).toHaveLength(2);
    expect(titles(compared("", "").replace("baseline was", "baseline is"))).toHaveLength(2);
  });
});
