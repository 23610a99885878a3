import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type EditorColours, editorTheme } from "../../../shared/render/chart-editor-theme.ts";
import { DARK_THEME, LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { type Colour, contrast, hexColour, parseColour } from "../../../shared/render/colour.ts";

const KINDS = ["light", "dark", "high-contrast-light", "high-contrast-dark"] as const;
const channel = fc.integer({ min: 0, max: 255 });
const colour = fc.tuple(channel, channel, channel).map((channels: Colour) => hexColour(channels));

function apart(one: string, other: string): number {
  const [a, b] = [parseColour(one, [0, 0, 0]), parseColour(other, [0, 0, 0])];
  return a === undefined || b === undefined ? Number.NaN : contrast(a, b);
}

describe("editorTheme", () => {
  test("keeps the editor's colours where they can be read", () => {
    const theme = editorTheme({ kind: "dark", background: "#1f1f1f", text: "#cccccc", font: "Inter" });
    expect(theme).toMatchObject({
      background: "#1f1f1f",
      text: "#cccccc",
      font: "Inter",
      highContrast: false,
    });
    expect(theme.series).toEqual(["#0072B2", "#D55E00", "#009E73", "#CC79A7"]);
  });

  test("puts a later colour of the palette where one is too near to the background", () => {
    const { series } = editorTheme({ kind: "dark", background: "#3a3a3a", text: "#ffffff" });
    expect(series).not.toContain("#0072B2");
    expect(new Set(series).size).toBe(4);
  });

  test("of high contrast takes the colours that stand furthest off, where there are four", () => {
    const { series } = editorTheme({ kind: "high-contrast-dark", background: "#000000", text: "#ffffff" });
    for (const entry of series) expect(apart(entry, "#000000")).toBeGreaterThanOrEqual(4.5);
  });

  test("of high contrast nothing stands back", () => {
    const theme = editorTheme({ kind: "high-contrast-light", background: "#ffffff", text: "#292929" });
    expect(theme).toMatchObject({ highContrast: true, quiet: theme.text, axis: theme.text });
  });

  test("takes what it cannot read from its own theme of that kind", () => {
    const colours = { background: "var(--nothing)", text: "" };
    expect(editorTheme({ kind: "dark", ...colours }).background).toBe(DARK_THEME.background);
    expect(editorTheme({ kind: "light", ...colours }).background).toBe(LIGHT_THEME.background);
  });

  test("can be read on any background", () => {
    fc.assert(
      fc.property(
        colour,
        colour,
        fc.constantFrom(...KINDS),
        (background, text, kind: EditorColours["kind"]) => {
          const theme = editorTheme({ kind, background, text });
          const paper = theme.background;
          expect(paper).toBe(background);
          // Black or white, whichever is further, stands at least 4.58:1 off any colour.
          for (const entry of [theme.text, theme.quiet])
            expect(apart(entry, paper)).toBeGreaterThanOrEqual(4.4);
          for (const entry of [theme.axis, theme.baseline, ...theme.series]) {
            expect(apart(entry, paper)).toBeGreaterThanOrEqual(2.9);
          }
        },
      ),
    );
  });
});
