import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { COLUMNS } from "../../grammar/columns.ts";
import { keywords } from "../../grammar/directives/index.ts";
import { parseLine, parseSpoken } from "../../grammar/line-parser.ts";
import { plainDirective } from "../../grammar/plain-directive.ts";

const columns = COLUMNS.map(({ name }) => name);
const blank = fc.stringMatching(/^[ \t]{1,3}$/);
const word = fc.oneof(
  fc.stringMatching(/^[A-Za-z0-9._:+%/-]{1,8}$/),
  fc.constantFrom("void", "-", "28", "0.5", ...keywords, ...columns),
);
const text = fc.stringMatching(/^"[A-Za-z #'[\]0-9é-]{0,8}"$/);

/** Compares where a line is plain, and gives whether it is. */
function checkAsParsed(line: string): boolean {
  const plain = plainDirective(line);
  if (plain !== undefined) expect(plain).toEqual(parseSpoken(line));
  return plain !== undefined;
}

describe("a plain line", () => {
  test("of words and texts reads as the grammar reads it", () => {
    const behind = fc.array(fc.tuple(blank, fc.oneof(word, text)), { maxLength: 5 });
    fc.assert(
      fc.property(
        fc.constantFrom("", "  "),
        fc.constantFrom(...keywords),
        behind,
        (before, keyword, atoms) => {
          const line = before + keyword + atoms.map(([space, atom]) => space + atom).join("");
          expect(checkAsParsed(line), line).toBe(true);
        },
      ),
    );
  });

  test("of heads of columns reads as the grammar reads it", () => {
    const unit = fc.constantFrom("[in]", "[inH2O]", "[%]", "[ft/s]", "[mN.m]", "");
    const heads = fc.array(fc.tuple(fc.constantFrom(...columns), unit), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(blank, heads, (space, written) => {
        const line = written.map(([name, its]) => space + name + its).join("");
        expect(checkAsParsed(line), line).toBe(true);
      }),
    );
  });

  test("is all that it takes: whatever it reads, the grammar reads alike", () => {
    const piece = fc.oneof(
      word,
      text,
      fc.constantFrom(
        "[",
        "]",
        "[in]",
        '"',
        "#",
        "\\",
        "\u00A0",
        "\uFEFF",
        "é",
        "<<<<<<<",
        "x-own",
        " ",
        "  ",
        "\t",
      ),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 9 }), (pieces) => {
        checkAsParsed(pieces.join(""));
        checkAsParsed(pieces.join(" "));
      }),
      { numRuns: 3000 },
    );
  });

  test.each(["", "  # remark", "0.1 28", "run a # b", 'note "a', 'note "a\\"b"', 'valve 2.020"', "lift[in"])(
    "%j is left to the grammar",
    (line) => {
      expect(plainDirective(line)).toBeUndefined();
    },
  );

  test("is what a heading, a condition and a head of columns are read by", () => {
    for (const line of ["run r1", '  note "cold"', "  lift[in]  depression[inH2O]"]) {
      expect(parseLine(line)).toEqual(plainDirective(line));
    }
  });
});
