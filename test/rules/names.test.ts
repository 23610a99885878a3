// Names and includes: what a file can see, what it cannot, and that nothing hangs on either.
import { describe, expect, test } from "vitest";
import { checkRecord, codesOf, findingOf, findingsOf } from "../kit/check-record.ts";

describe("names", () => {
  test("of what stands anywhere in the file or in what it includes, at any depth, are found", () => {
    checkRecord(`
      headnote 1
      include "a/one.headnote"
      head h1
        engine e1
      #- /a/one.headnote
      headnote 1
      include "../two.headnote"
      #- /two.headnote
      headnote 1
      engine e1
        bore 100 mm
    `);
  });

  test("of one kind are no names of another", () => {
    checkRecord(`
      headnote 1
      engine e1
        bore 100 mm
      port p1
        side intake
        valve 46 mm
        of e1
      #    ^^ error[name-not-found]
    `);
  });

  test("that are nearly right come with a fix", () => {
    const fixture = "headnote 1\nengine road-engine\n  bore 100 mm\nhead h1\n  engine raod-engine\n";
    expect(findingOf(fixture, "name-not-found").finding.fix?.edits[0]?.text).toBe("road-engine");
  });

  test("twice in a file, and in a file and what it includes, are marked where they stand again", () => {
    checkRecord(`
      headnote 1
      include "shop.headnote"
      head h1
      head h1
      #    ^^ error[duplicate-id]
      bench north
      #     ^^^^^ error[duplicate-id]
        shows flow
      #- /shop.headnote
      headnote 1
      bench north
        shows flow
    `);
  });
});

describe("includes", () => {
  test("that form a circle are a finding in each file of it, and name the way", () => {
    const fixture = [
      ...["headnote 1", 'include "b.headnote"', "#- /b.headnote", "headnote 1", 'include "c.headnote"'],
      ...["#- /c.headnote", "headnote 1", 'include "main.headnote"', ""],
    ].join("\n");
    for (const path of ["/main.headnote", "/b.headnote", "/c.headnote"])
      expect(
        findingsOf(fixture, path).map(({ finding }) => finding.code),
        path,
      ).toEqual(["include-cycle"]);
    expect(findingOf(fixture, "include-cycle").message).toContain(
      "b.headnote -> c.headnote -> main.headnote",
    );
  });

  test("of a circle that does not lead back here are no finding here", () => {
    const fixture = [
      ...["headnote 1", 'include "b.headnote"', "#- /b.headnote", "headnote 1", 'include "c.headnote"'],
      ...["#- /c.headnote", "headnote 1", 'include "b.headnote"', ""],
    ].join("\n");
    expect(codesOf(fixture)).toEqual([]);
  });

  test("of the file itself are a circle of one", () => {
    expect(codesOf('headnote 1\ninclude "main.headnote"\n')).toEqual(["include-cycle"]);
    expect(codesOf('headnote 1\ninclude "./x/../main.headnote"\n')).toEqual(["include-cycle"]);
  });

  test("that are missing are marked at their path, and the rest of the file still works", () => {
    checkRecord(`
      headnote 1
      include "nowhere.headnote"
      #       ^^^^^^^^^^^^^^^^^^ error[missing-include]
      engine e1
        bore 100 mm
      head h1
        engine e1
    `);
  });

  test("that are missing tell once of the names that may stand in them, and nothing more is said of these", () => {
    const fixture = `headnote 1
include "nowhere.headnote"
include "gone.headnote"
engine e1
  cam c1
head h1
  engine e1
head h2
  engine e2
head h4
  engine e2
session 2026-03-02
  bench north
  port p3
`;
    expect(codesOf(fixture)).toEqual(["missing-include", "missing-include"]);
    const [first, second] = findingsOf(fixture);
    expect(first?.message).toBe(
      "\"nowhere.headnote\" cannot be read: it is not there; cam 'c1', engine 'e2', bench 'north' and 1 more name could not be looked up",
    );
    expect(first?.finding.related.map(({ span, message }) => `${span.line} ${message}`)).toEqual([
      "4 cam 'c1' is used here",
      "8 engine 'e2' is used here",
      "10 engine 'e2' is used here",
      "12 bench 'north' is used here",
      "13 port 'p3' is used here",
    ]);
    expect(second?.message).toBe('"gone.headnote" cannot be read: it is not there');
  });

  test("that lead outside tell of the names that may stand in them", () => {
    const fixture = 'headnote 1\ninclude "/etc/shop.headnote"\nhead h1\n  engine e1\n';
    expect(codesOf(fixture)).toEqual(["include-outside"]);
    expect(findingOf(fixture, "include-outside").message).toContain("; engine 'e1' could not be looked up");
  });

  test("that begin at the root of the disk lie outside", () => {
    expect(codesOf('headnote 1\ninclude "/etc/shop.headnote"\n')).toEqual(["include-outside"]);
  });

  test("twice of one file are read once", () => {
    const fixture = [
      ...["headnote 1", 'include "a.headnote"', 'include "a.headnote"', "head h1", "  engine e1"],
      ...["#- /a.headnote", "headnote 1", "engine e1", "  bore 100 mm", ""],
    ].join("\n");
    expect(codesOf(fixture)).toEqual([]);
  });
});

describe("what a bench needs for what it shows", () => {
  test.each([
    ["shows percent", 1],
    ["shows meter-flow", 1],
    ["shows drop", 2],
    ["shows flow", 0],
  ])("%s: %i lines", (shows, count) => {
    expect(codesOf(`headnote 1\nbench north\n  ${shows}\n`)).toEqual(Array(count).fill("missing-line"));
  });
});
