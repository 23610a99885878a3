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

describe("values that are set", () => {
  test("are offered as other blocks state them, the most frequent first", () => {
    const ports = "port a\n  valve 1.94 in\nport b\n  valve 2.02 in\nport c\n  valve 2.02 in\nport d\n";
    expect(offersAt(`headnote 1\n${ports}  valve $0\n`)).toMatchObject([
      { label: "2.02 in", insert: "2.02 in", detail: "as in port b" },
      { label: "1.94 in", detail: "as in port a" },
    ]);
    const seats = "port a\n  seat 45 deg width 0.060 in\nport b\n";
    expect(labelsAt(`headnote 1\n${seats}  seat 45 deg width $0\n`)).toEqual(["0.060 in"]);
  });

  test("have no broken ones among them", () => {
    const ports = "port a\n  valve 2,02 in\nport b\n  valve 2 furlong\nport c\n";
    expect(labelsAt(`headnote 1\n${ports}  valve $0\n`)).toEqual([]);
  });

  test("do not count what was measured", () => {
    const session = "session 2026-03-02\n  leak 1.8 cfm at 28 inH2O\nrun r\n";
    expect(labelsAt(`headnote 1\n${session}  leak $0\n`)).toEqual(["none"]);
  });

  test("are words of the user's own and texts too, but no notes", () => {
    const port = "port a\n  section pinch 2 in2\n  section bowl 3 in2\nport b\n";
    expect(labelsAt(`headnote 1\n${port}  section $0\n`)).toEqual(["pinch", "bowl"]);
    const run = 'run a\n  note "belt slipped"\nrun b\n';
    expect(labelsAt(`headnote 1\n${run}  note $0\n`)).toEqual([]);
    expect(labelsAt(`headnote 1\n${run}  note "$0"\n`)).toEqual([]);
  });
});

describe("lifts", () => {
  const run = 'run a\n  lift[mm]  flow[cfm]\n  2.0  50\n  4.0  90\n  4.0  91  void "slipped"\n  -  80\n';

  test("of the run above are offered for a trace and a ladder", () => {
    expect(offersAt(`headnote 1\n${run}run z\ntrace $0\n`)).toEqual([]);
    expect(offersAt(`headnote 1\nrun z\n${run}trace $0\n`)).toMatchObject([
      { label: "2.0 mm", detail: "a lift of run a" },
      { label: "4.0 mm" },
    ]);
    expect(labelsAt(`headnote 1\nladder $0\n${run}`)).toEqual(["2.0 mm", "4.0 mm"]);
  });

  test("of the block's own run are offered for what is expected there, and for a map", () => {
    expect(labelsAt(`headnote 1\n${run.replace("run a", "run a\n  expect flow 90 cfm at $0")}`)).toEqual([
      "2.0 mm",
      "4.0 mm",
    ]);
    expect(labelsAt(`headnote 1\n${run}map of a\n  lift $0\n`)).toEqual(["2.0 mm", "4.0 mm"]);
    expect(labelsAt(`headnote 1\n${run}cam c\n  lift $0\n`)).toEqual([]);
  });
});

test("what is stated at a depression is offered the target", () => {
  const session = "session 2026-03-02\n  target 7.0 kPa\n";
  expect(offersAt(`headnote 1\n${session}  leak 1.8 cfm at $0\n`)).toMatchObject([
    { label: "7.0 kPa", detail: "the target" },
  ]);
  expect(labelsAt(`headnote 1\n${session}run r\n  target $0\n`)).toEqual(["7.0 kPa"]);
});

test("units come with their factor and its source", () => {
  const [unit] = offersAt("headnote 1\nport p\n  valve 2 $0\n");
  expect(unit).toMatchObject({
    label: "in",
    detail: "a length",
    documentation: expect.stringContaining("1 in = 0.0254 m"),
  });
});
