// A comment silences the finding that it names, where it stands, and says so when it silences nothing.
import { expect, test } from "vitest";
import { checkRecord, codesOf, findingOf, record } from "../kit/check-record.ts";

const OFF = "0.100 27.0 54.0";
const GOOD = "0.200 28.0 108.0";

test.each([
  ["behind the row", [`${OFF} # allow off-target: motor hot`, GOOD]],
  ["on the line above", ["# allow off-target: motor hot", OFF, GOOD]],
  ["without a reason", [`${OFF} # allow off-target`, GOOD]],
  ["above another comment", ["# allow off-target: motor hot", "# and the belt slipped", OFF, GOOD]],
  ["behind a remark with a number sign", [`${OFF} "run #2" # allow off-target: motor hot`, GOOD]],
])("%s it silences the finding", (_, rows) => {
  expect(codesOf(record({ rows }))).toEqual([]);
});

test("it reaches one line and not the next", () => {
  const rows = ["# allow off-target: motor hot", OFF, "0.200 27.0 106.0"];
  expect(codesOf(record({ rows }))).toEqual(["off-target"]);
});

test("it does not reach the line below from behind a row", () => {
  const rows = [`${GOOD.replace("0.200", "0.050").replace("108.0", "28.0")} # allow off-target: later`, OFF];
  expect(codesOf(record({ rows }))).toEqual(["unused-allow", "off-target"]);
});

test("it silences all findings of its code on its line, and none of another", () => {
  expect(codesOf(record({ rows: ["0.100 27.0 12.0 # allow off-target: motor hot", GOOD] }))).toEqual([
    "implausible-cd",
  ]);
});

test("one that silences nothing is a hint, at its code", () => {
  checkRecord(`
    headnote 1
    bench north # allow missing-line: none
    #                   ^^^^^^^^^^^^ hint[unused-allow]
      shows flow
  `);
});

test("one that names no finding is a warning, with the nearest code as its fix", () => {
  const rows = [`${OFF} # allow of-target: motor hot`, GOOD];
  expect(codesOf(record({ rows }))).toEqual(["off-target", "unknown-allow"]);
  expect(findingOf(record({ rows }), "unknown-allow").finding.fix?.edits[0]?.text).toBe("off-target");
});

test("a remark that speaks of allowing is no comment", () => {
  expect(codesOf(record({ rows: [`${OFF} "# allow off-target: motor hot"`, GOOD] }))).toEqual(["off-target"]);
});

test("one that names several codes is told that it can have one, and what it says otherwise is a sentence", () => {
  const several = findingOf(
    record({ rows: ["# allow off-target, drift: motor hot", OFF, GOOD] }),
    "unknown-allow",
  );
  expect(several.message).toBe("there is no finding 'off-target, drift' to allow");
  expect(several.help).toBe("a comment silences one finding: write a comment for each");
  expect(several.finding.fix?.edits.map(({ text }) => text.split("\n").map((line) => line.trim()))).toEqual([
    ["# allow off-target: motor hot", "# allow drift: motor hot"],
  ]);
  const behind = record({ rows: [`${OFF} # allow off-target, drift`, GOOD] });
  expect(codesOf(behind)).toEqual(["off-target", "unknown-allow"]);
  expect(findingOf(behind, "unknown-allow").finding.fix).toBeUndefined();
  expect(codesOf(record({ rows: ["# allow time, patience", GOOD] }))).toEqual([]);
});

test("any number of them may stand above a line", () => {
  // Were each to look for its line by itself, this would take half a minute.
  const comments = Array.from({ length: 100_000 }, (_, index) =>
    index % 2 === 0 ? "# allow off-target: a" : "# b",
  );
  expect(new Set(codesOf(record({ rows: [...comments, OFF, GOOD] })))).toEqual(new Set(["unused-allow"]));
});
