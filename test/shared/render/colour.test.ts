import { describe, expect, test } from "vitest";
import { contrast, hexColour, mixed, parseColour } from "../../../shared/render/colour.ts";

const WHITE = [255, 255, 255] as const;

function checkRead(text: string, hex: string | undefined) {
  const colour = parseColour(text, WHITE);
  expect(colour && hexColour(colour)).toBe(hex);
}

describe("parseColour", () => {
  test("reads the forms in which editors state colours", () => {
    checkRead("#1e1e1e", "#1e1e1e");
    checkRead(" #FFF ", "#ffffff");
    checkRead("#0000", "#ffffff");
    checkRead("#00000080", "#7f7f7f");
    checkRead("rgb(30, 31, 32)", "#1e1f20");
    checkRead("rgba(0, 0, 0, 0.5)", "#808080");
    checkRead("rgb(0 0 0 / 50%)", "#808080");
    checkRead("rgb(300, 0, 0)", "#ff0000");
  });

  test("refuses what is none", () => {
    for (const text of ["", "red", "#12345", "rgb(1,2)", "var(--x)", "rgb(1.2.3,0,0)"])
      checkRead(text, undefined);
  });
});

test("mixed goes from one to the other", () => {
  expect(hexColour(mixed([0, 0, 0], WHITE, 0))).toBe("#000000");
  expect(hexColour(mixed([0, 0, 0], WHITE, 1))).toBe("#ffffff");
});

// WCAG 2.2: black on white is 21:1. #767676 is the lightest grey that the working group's own technique G18 lists at 4.5:1
// (from memory).
test("contrast is that of WCAG 2.2", () => {
  expect(contrast([0, 0, 0], WHITE)).toBeCloseTo(21, 9);
  expect(contrast([0x76, 0x76, 0x76], WHITE)).toBeGreaterThanOrEqual(4.5);
  expect(contrast([0x77, 0x77, 0x77], WHITE)).toBeLessThan(4.5);
});
