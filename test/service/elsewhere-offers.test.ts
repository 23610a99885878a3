import { describe, expect, test } from "vitest";
import type { Completion } from "../../server/service/completion.ts";
import { elsewhereOffers, soughtElsewhere } from "../../server/service/elsewhere-offers.ts";
import { edited, open } from "../kit/service.ts";

const SHOP =
  '#- shop.headnote\nheadnote 1\nbench north "quick"\n  shows flow\n#- heads/h.headnote\nheadnote 1\nport p\n  side intake\n';
const SESSIONS = `#- heads/monday.headnote
headnote 1
include "h.headnote"
session 2026-03-02
  port p
run one
  stage "as \\"cast\\""
run two
  stage "bowl"
  port other
#- heads/tuesday.headnote
headnote 1
include "h.headnote"
run three
  port p
  stage "bowl"
`;

/** What other records offer at `$0`, and the file after one of them is taken. */
function elsewhere(fixture: string): readonly (Completion & { readonly after: string })[] {
  const { analysis, position, analyse, paths, text } = open(fixture);
  const sought = soughtElsewhere(analysis, position);
  if (sought === undefined) return [];
  const others = paths.map((path) => analyse(path).scope);
  return elsewhereOffers(analysis, sought, others).map((offer) => {
    const span = { line: position.line, from: offer.from, to: offer.to };
    return { ...offer, after: edited(text, [{ span, text: offer.insert }, ...(offer.edits ?? [])]) };
  });
}

describe("names of other records", () => {
  test("are offered with the include that brings them in", () => {
    const [bench, ...more] = elsewhere(`headnote 1\nsession 2026-03-02\n  bench n$0\n${SHOP}`);
    expect(more).toEqual([]);
    expect(bench).toMatchObject({ label: "north", detail: "quick" });
    expect(bench?.after).toBe('headnote 1\ninclude "shop.headnote"\nsession 2026-03-02\n  bench north');
  });

  test("stand behind the includes that are there", () => {
    const [port] = elsewhere(`headnote 1\ninclude "shop.headnote"\n\nsession 2026-03-02\n  port $0\n${SHOP}`);
    expect(port?.after).toContain('include "shop.headnote"\ninclude "heads/h.headnote"\n\n');
  });

  test("are no runs but those of the same port", () => {
    const run = `headnote 1\ninclude "heads/h.headnote"\nsession 2026-03-04\n  port p\nrun now\n  baseline $0\n`;
    expect(elsewhere(run + SHOP + SESSIONS).map(({ label }) => label)).toEqual(["three", "one"]);
    const third = run.replace("run now\n", "run now\n  cylinder 3\n");
    const monday = SESSIONS.replace("run one\n", "run one\n  cylinder 3\n");
    expect(elsewhere(third + SHOP + monday).map(({ label }) => label)).toEqual(["one", "three"]);
    expect(elsewhere(run.replace("  port p\n", "") + SHOP + SESSIONS)).toEqual([]);
  });

  test("come from near records first, and from those that only define things", () => {
    const far =
      "#- old/shop.headnote\nheadnote 1\nbench south\n#- a.headnote\nheadnote 1\nbench west\nsession 2026-03-01\n";
    const found = elsewhere(`headnote 1\nsession 2026-03-02\n  bench $0\n${far}${SHOP}`);
    expect(found.map(({ label }) => label)).toEqual(["north", "west", "south"]);
  });

  test("are not offered where their include would have no place", () => {
    expect(elsewhere(`session 2026-03-02\n  bench $0\n${SHOP}`)).toEqual([]);
  });
});

test("stages of other records are offered, the most frequent first, in quotes and between them", () => {
  const run = "headnote 1\nrun now\n";
  expect(elsewhere(`${run}  stage $0\n${SHOP}${SESSIONS}`).map(({ insert }) => insert)).toEqual([
    '"bowl"',
    '"as \\"cast\\""',
  ]);
  expect(elsewhere(`${run}  stage "$0"\n${SHOP}${SESSIONS}`)).toMatchObject([
    { label: "bowl", insert: "bowl" },
    { label: 'as "cast"', insert: 'as \\"cast\\"' },
  ]);
});

test("nothing is sought for what is new, for notes and for numbers", () => {
  const lines = [
    "run $0",
    "run now\n  note $0",
    "run now\n  cylinder $0",
    "run now\n  $0",
    "# $0",
    "run now\n  lift[$0",
  ];
  for (const line of lines) expect(elsewhere(`headnote 1\n${line}\n${SHOP}${SESSIONS}`), line).toEqual([]);
});
