import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseLine, parseRow } from "../../grammar/line-parser.ts";
import { plainRow } from "../../grammar/plain-row.ts";

const blank = fc.stringMatching(/^[ \t]{1,4}$/);
const cell = fc.oneof(
  fc.stringMatching(/^-?[0-9]{1,8}$/),
  fc.stringMatching(/^-?[0-9]{1,6}\.[0-9]{1,8}$/),
  fc.constant("-"),
);

describe("a plain row", () => {
  test("reads as the grammar reads it", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(blank, cell), { minLength: 1, maxLength: 8 }), (cells) => {
        const text = cells.map(([before, word]) => before + word).join("");
        expect(plainRow(text)).toEqual(parseRow(text));
      }),
    );
  });

  test("is all that it takes: whatever it reads, the grammar reads alike", () => {
    const nearly = fc.array(fc.constantFrom(...'0123456789.-/+, \tein#"[]\u00A0\u0660'), { maxLength: 24 });
    fc.assert(
      fc.property(nearly, (characters) => {
        const text = characters.join("");
        const plain = plainRow(text);
        if (plain !== undefined) expect(plain).toEqual(parseRow(text));
      }),
      { numRuns: 2000 },
    );
  });

  test.each([
    "",
    "  ",
    "0.1 void",
    "5. 2",
    ".5 2",
    "1/2 3",
    "+1",
    "1e3",
    "0.1 # x",
    "1234567890123456 1",
    '0.1 "x"',
  ])("%j is left to the grammar", (text) => {
    expect(plainRow(text)).toBeUndefined();
  });

  test("is what a line of readings is read by", () => {
    expect(parseLine("  0.300  28.0  -")).toEqual(plainRow("  0.300  28.0  -"));
  });
});
