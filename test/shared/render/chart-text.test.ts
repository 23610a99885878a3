import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cleanText, clipText, HARD_SPACE, textWidth, wrapText } from "../../../shared/render/chart-text.ts";

const anyText = fc.string({ unit: "binary", maxLength: 80 });
const width = fc.integer({ min: 15, max: 400 });

describe("textWidth", () => {
  test("adds the advances of the font (horizontal metrics of DejaVu Sans 2.37, read from the font)", () => {
    expect(textWidth("iM", 1000)).toBeCloseTo(278 + 863, 9);
    expect(textWidth(`a${HARD_SPACE}b`, 10)).toBeCloseTo((613 + 318 + 635) / 100, 9);
  });

  test("takes bold and letters beyond ASCII wide", () => {
    expect(textWidth("m", 10, true)).toBeGreaterThanOrEqual(10.42);
    expect(textWidth("漢", 10)).toBeGreaterThanOrEqual(10);
  });
});

describe("cleanText", () => {
  test("holds nothing that XML forbids, nor marks that turn the direction of a line", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(cleanText(text)).not.toMatch(/[\p{Cc}\p{Cs}\ufffe\uffff\u202a-\u202e\u2066-\u2069]/u);
      }),
    );
    expect(cleanText("a\tb\u0000\u202ec\ud800")).toBe("a b c");
  });

  test("is no longer than 400 characters, and says where it was cut", () => {
    const cut = cleanText("x".repeat(10_000));
    expect(cut).toHaveLength(400);
    expect(cut.endsWith("…")).toBe(true);
    expect(cleanText("x".repeat(400))).toBe("x".repeat(400));
  });
});

describe("clipText and wrapText", () => {
  test("leave what fits as it is", () => {
    expect(clipText("as cast", 200, 11)).toBe("as cast");
    expect(wrapText("short side laid back", 60, 11, 3)).toEqual(["short side", "laid back"]);
  });

  test("break at a hard space only where nothing else helps", () => {
    expect(wrapText(`port${HARD_SPACE}p · bench${HARD_SPACE}b`, 60, 11, 3)).toEqual([
      `port${HARD_SPACE}p ·`,
      `bench${HARD_SPACE}b`,
    ]);
    expect(wrapText(`one${HARD_SPACE}two${HARD_SPACE}three`, 50, 11, 3)).toEqual(["one two", "three"]);
  });

  test("never exceed the width nor the number of lines", () => {
    fc.assert(
      fc.property(anyText, width, fc.integer({ min: 1, max: 4 }), (text, most, count) => {
        const lines = wrapText(cleanText(text), most, 11, count);
        expect(lines.length).toBeLessThanOrEqual(count);
        for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(most);
      }),
    );
  });
});
