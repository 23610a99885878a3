// Carets stand below what they mean, in columns of a terminal.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellWidth } from "../../server/cli/cell-width.ts";
import { excerpt } from "../../server/cli/excerpt.ts";

/** A line with its place between two bars, and both lines as they are to be shown. */
function checkExcerpt(marked: string, text: string, carets: string): void {
  const start = marked.indexOf("|");
  const end = marked.lastIndexOf("|") - 1;
  expect(excerpt(marked.replaceAll("|", ""), start + 1, end + 1)).toEqual({ text, carets });
}

describe("carets stand below", () => {
  test("plain text", () => checkExcerpt("ab |cd| ef", "ab cd ef", "   ^^"));
  test("a place behind tabs", () => checkExcerpt("\ta\t|bc|", "    a    bc", "         ^^"));
  // Unicode Standard Annex 11: han and fullwidth forms take two columns, combining marks none.
  test("a place behind wide characters", () => checkExcerpt("漢字Ａ |b|", "漢字Ａ b", "       ^"));
  test("wide characters themselves", () => checkExcerpt("a |漢字|", "a 漢字", "  ^^^^"));
  test("a place behind combining marks", () => checkExcerpt("e\u0301 |b|", "e\u0301 b", "  ^"));
  test("a place behind a control character", () => checkExcerpt("a\u0007 |b|", "a\\u0007 b", "        ^"));
  test("an empty place, with one caret", () => checkExcerpt("ab||", "ab", "  ^"));
});

describe("a long line", () => {
  test("is cut on both sides of the place", () => {
    const { text, carets } = excerpt(`${"a".repeat(5000)}XYZ${"b".repeat(5000)}`, 5001, 5004);
    expect(text).toMatch(/^…a+XYZb+…$/);
    expect(text.length).toBeLessThan(200);
    expect(text.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("XYZ");
  });
});

function checkPlaces(line: fc.Arbitrary<string>, check: (text: string, carets: string) => void): void {
  fc.assert(
    fc.property(line, fc.nat(), fc.nat(), (text, a, b) => {
      const [from = 0, to = 0] = [a, b].map((at) => at % (text.length + 1)).sort((x, y) => x - y);
      const shown = excerpt(text, from + 1, to + 1);
      check(shown.text, shown.carets);
    }),
  );
}

test("any place in any line has a caret and no character that acts on a terminal", () => {
  checkPlaces(fc.string({ unit: "binary", maxLength: 400 }), (text, carets) => {
    expect(carets).toMatch(/^ *\^+$/);
    expect(text).not.toMatch(/\p{Cc}/u);
  });
});

test("carets reach no further than one column behind the line", () => {
  const unit = fc.constantFrom("a", " ", "漢", "\t", "\u0007");
  const line = fc.string({ unit, maxLength: 300 }).map((text) => `${text}x`);
  checkPlaces(line, (text, carets) => expect(carets.length).toBeLessThanOrEqual(cellWidth(text) + 1));
});
