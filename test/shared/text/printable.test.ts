import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printable } from "../../../shared/text/printable.ts";

describe("printable text", () => {
  test.each([
    ["\u001b[31mred", "\\u001b[31mred"],
    ["\u009b31m", "\\u009b31m"],
    ["a\u202eb", "a\\u202eb"],
    ["a\rb\nc", "a\\u000db\\u000ac"],
    ["a\u2028b", "a\\u2028b"],
    ["short side – 0,5 mm ° ±", "short side – 0,5 mm ° ±"],
  ])("%j is shown as %j", (text, shown) => {
    expect(printable(text)).toBe(shown);
  });

  test("never contains a character that acts, and is itself printable", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const shown = printable(text);
        expect(shown).not.toMatch(/[\p{Cc}\p{Bidi_C}]/u);
        expect(printable(shown)).toBe(shown);
      }),
    );
  });

  test("inside JSON text is still JSON of the same data", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(JSON.parse(printable(JSON.stringify(text)))).toBe(text);
      }),
    );
  });
});
