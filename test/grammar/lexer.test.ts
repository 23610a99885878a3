// The tokens of a line are the line: nothing a user types is ever lost.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lexLine } from "../../grammar/lexer.ts";
import { anyUnits, brokenText } from "../kit/arbitraries.ts";

const line = fc.oneof(anyUnits(60), brokenText).map((text) => text.replace(/[\r\n]/g, " "));

function checkTokens(text: string, ...expected: string[]): void {
  expect(lexLine(text).map(({ tokenType, image }) => `${tokenType.name} ${image}`)).toEqual(expected);
}

describe("the tokens of a line", () => {
  test("joined are the line again, and each stands where it says", () => {
    fc.assert(
      fc.property(line, (text) => {
        const tokens = lexLine(text);
        expect(tokens.map(({ image }) => image).join("")).toBe(text);
        for (const { startOffset, image } of tokens) expect(text.startsWith(image, startOffset)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("a # begins a comment behind white space only", () => {
    checkTokens("a#b #c", "PlainWord a#b", "WhiteSpace  ", "Comment #c");
    checkTokens("\uFEFF#c", "WhiteSpace \uFEFF", "Comment #c");
  });

  test("a comment and an open text run to the end of the line, whatever stands in them", () => {
    checkTokens("# a\u2028b", "Comment # a\u2028b");
    checkTokens('"a\u2029b', 'UnclosedText "a\u2029b');
    checkTokens('"a\\\u2028"', 'Text "a\\\u2028"');
  });

  test.each([
    ['2.020"', "Decimal 2.020", 'InchMark "'],
    ['28"H2O', "Decimal 28", 'InchMark "H2O'],
    ['28"wc', "Decimal 28", 'InchMark "wc'],
    ['11/32"', "PlainWord 11/32", 'InchMark "'],
    ['28"Hg', "Decimal 28", 'UnclosedText "Hg'],
    ['"laid back 0.040"', 'Text "laid back 0.040"'],
    ['["]', "LeftBracket [", 'InchMark "', "RightBracket ]"],
    ['["H2O]', "LeftBracket [", 'InchMark "H2O', "RightBracket ]"],
  ])("%s is an inch mark where no text could begin", (text, ...expected) => checkTokens(text, ...expected));

  test("void is a word of its own only where it stands alone", () => {
    checkTokens("void", "Void void");
    checkTokens("voided", "PlainWord voided");
  });
});
