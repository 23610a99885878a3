import { describe, expect, test } from "vitest";
import { definition } from "../../server/service/definition.ts";
import { nameAt, places } from "../../server/service/names.ts";
import { references } from "../../server/service/references.ts";
import { renamable, rename } from "../../server/service/rename.ts";
import { edited, open } from "../kit/service.ts";

const SHOP = `headnote 1
include "shop.headnote"
session 2026-03-02
  bench no$0rth
#- shop.headnote
headnote 1
bench north
  shows flow
#- other.headnote
headnote 1
bench north
  shows flow
session 2026-03-03
  bench north
#- third.headnote
headnote 1
include "shop.headnote"
session 2026-03-04
  bench north
`;

test("the name of a file leads to the file, where it can be read", () => {
  const to = (line: string) => {
    const fixture = `headnote 1\n${line}\n#- shop.headnote\nheadnote 1\n`;
    const { analysis, position } = open(fixture);
    return definition(analysis, position);
  };
  const start = { line: 0, from: 0, to: 0 };
  expect(to('include "sh$0op.headnote"')).toEqual({ path: "shop.headnote", span: start });
  expect(to('include "sh$0ip.headnote"')).toBeUndefined();
  expect(to('incl$0ude "shop.headnote"')).toBeUndefined();
  const trace = "run a\ntrace 0.3 in of a\n";
  expect(to(`${trace}  log "t$0.csv" time "t" s depression "dp" Pa`)).toEqual({ path: "t.csv", span: start });
});

describe("a name", () => {
  test("leads to its definition in an included file", () => {
    const { analysis, position } = open(SHOP);
    expect(definition(analysis, position)).toMatchObject({
      path: "shop.headnote",
      span: { line: 1, from: 6, to: 11 },
    });
  });

  test("is found in all files that see the same thing, and not where another has the name", () => {
    const { analysis, position, analyse, paths } = open(SHOP);
    const name = nameAt(analysis.scope.file, position);
    const scopes = paths.map((path) => analyse(path).scope);
    const found = places(analysis.scope, name?.kind ?? "run", name?.id ?? "", scopes);
    expect(found.map(({ path, role }) => `${path} ${role}`)).toEqual([
      "main.headnote use",
      "shop.headnote definition",
      "third.headnote use",
    ]);
  });

  test("is changed in all of them at once", () => {
    const { analysis, position, analyse, paths, text } = open(SHOP);
    const renamed = rename(
      analysis,
      position,
      "tower",
      paths.map((path) => analyse(path).scope),
    );
    if ("problem" in renamed) throw new Error(renamed.problem);
    expect([...renamed.keys()]).toEqual(["main.headnote", "shop.headnote", "third.headnote"]);
    expect(edited(text, renamed.get("main.headnote") ?? [])).toContain("bench tower");
  });

  test("is not changed into one that is taken or cannot be", () => {
    const { analysis, position } = open(
      "headnote 1\nbench no$0rth\n  shows flow\nbench south\n  shows flow\n",
    );
    expect(rename(analysis, position, "south", [])).toEqual({ problem: "there is already a bench 'south'" });
    expect(rename(analysis, position, "a b", [])).toHaveProperty("problem");
  });

  test("is changed in the included files too where the editor knows of no other file", () => {
    const { analysis, position } = open(SHOP);
    const renamed = rename(analysis, position, "tower", []);
    if ("problem" in renamed) throw new Error(renamed.problem);
    expect([...renamed.keys()]).toEqual(["main.headnote", "shop.headnote"]);
  });

  test("is not changed into one that a file has which sees the thing without naming it", () => {
    const { analysis, position, analyse, paths } = open(`headnote 1
bench no$0rth
  shows flow
#- other.headnote
headnote 1
include "main.headnote"
bench tower
  shows flow
`);
    const scopes = paths.map((path) => analyse(path).scope);
    expect(rename(analysis, position, "tower", scopes)).toEqual({
      problem: "there is already a bench 'tower'",
    });
  });
});

const RANGES = `headnote 1
include "shop.headnote"
session 2026-03-02
  bench north
run r1
  lift[in]  depression[inH2O]  reading[%]  range
     0.100               28.0        55.0  hi$0gh
     0.200               28.0           -  -
     0.300               28.0        75.0  low
run r2
  bench south
  lift[in]  depression[inH2O]  reading[%]  range
     0.100               28.0        55.0  high
plate-check p
  depression[inH2O]  reading[%]  range
               28.0        60.0  high
ladder 0.3 in of r1
  depression[inH2O]  reading[%]  range
               20.0        60.0  high
#- shop.headnote
headnote 1
bench north
  shows percent
  range high 450 cfm at 28 inH2O
  range low 150 cfm at 28 inH2O
bench south
  shows percent
  range high 300 cfm at 28 inH2O
`;

describe("the name of a range", () => {
  test("leads to its line in the bench that the row was read on", () => {
    const { analysis, position } = open(RANGES);
    expect(definition(analysis, position)).toMatchObject({
      path: "shop.headnote",
      span: { line: 3, from: 8, to: 12 },
    });
  });

  test("is found in all readings of that bench, and not in those of another", () => {
    const { analysis, position } = open(RANGES);
    const found = references(analysis, position, []);
    expect(found.map(({ path, span, role }) => `${path} ${span.line} ${role}`)).toEqual([
      "main.headnote 6 use",
      "main.headnote 15 use",
      "main.headnote 18 use",
      "shop.headnote 3 definition",
    ]);
  });

  test("is changed wherever it stands, if the bench has no other of that name", () => {
    const { analysis, position } = open(RANGES);
    expect(renamable(analysis, position)).toMatchObject({ id: "high", span: { line: 6 } });
    expect(rename(analysis, position, "low", [])).toEqual({ problem: "there is already a range 'low'" });
    expect(rename(analysis, position, "void", [])).toHaveProperty("problem");
    const renamed = rename(analysis, position, "wide", []);
    if ("problem" in renamed) throw new Error(renamed.problem);
    expect([...renamed].map(([path, edits]) => `${path} ${edits.length}`)).toEqual([
      "main.headnote 3",
      "shop.headnote 1",
    ]);
  });
});
