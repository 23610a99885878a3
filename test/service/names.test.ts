import { describe, expect, test } from "vitest";
import { definition } from "../../server/service/definition.ts";
import { nameAt, places } from "../../server/service/names.ts";
import { rename } from "../../server/service/rename.ts";
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
});
