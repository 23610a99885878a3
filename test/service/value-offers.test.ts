import { describe, expect, test } from "vitest";
import { labelsAt, offersAt } from "../kit/offers.ts";

describe("names", () => {
  test("used alike are ordered by how near they stand", () => {
    const runs = "run a\nrun b\nrun c\n";
    expect(labelsAt(`headnote 1\n${runs}run d\n  baseline $0\n`)).toEqual(["c", "b", "a"]);
    expect(labelsAt(`headnote 1\n${runs}run d\n  baseline a\nrun e\n  baseline $0\n`)).toEqual([
      "a",
      "d",
      "c",
      "b",
    ]);
  });

  test("do not count the one that is being written", () => {
    expect(labelsAt("headnote 1\nengine one\nengine two\nhead h\n  engine on$0e\n")).toEqual(["two", "one"]);
  });

  test("defined twice are offered once", () => {
    const fixture =
      'headnote 1\ninclude "s.headnote"\nengine e\nhead h\n  engine $0\n#- s.headnote\nheadnote 1\nengine e\n';
    expect(labelsAt(fixture)).toEqual(["e"]);
  });

  test("of other files say which", () => {
    const fixture =
      'headnote 1\ninclude "s.headnote"\nhead h\n  engine $0\n#- s.headnote\nheadnote 1\nengine e "old"\n';
    expect(offersAt(fixture)).toMatchObject([
      { label: "e", detail: "old", documentation: "in s\\.headnote" },
    ]);
  });
});

describe("stages", () => {
  const runs = 'run a\n  stage "as \\"cast\\""\nrun b\n  stage "bowl"\nrun c\n';

  test("that were named before are offered in quotes", () => {
    const items = offersAt(`headnote 1\n${runs}  stage $0\n`);
    expect(items.map(({ insert }) => insert)).toEqual(['"as \\"cast\\""', '"bowl"']);
  });

  test("are offered within quotes too, and take the place of what stands there", () => {
    const items = offersAt(`headnote 1\n${runs}  stage "bo$0l"\n`);
    expect(items).toMatchObject([
      { insert: 'as \\"cast\\"', from: 9, to: 12 },
      { insert: "bowl", from: 9, to: 12 },
    ]);
  });
});

test("units come with their factor and its source", () => {
  const [unit] = offersAt("headnote 1\nport p\n  valve 2 $0\n");
  expect(unit).toMatchObject({
    label: "in",
    detail: "a length",
    documentation: expect.stringContaining("1 in = 0.0254 m"),
  });
});
