// Makes a chart's colours from the few that an editor gives, so that every sign can still be told apart.
import { CHART_FONT, type ChartTheme, DARK_THEME, LIGHT_THEME } from "./chart-theme.ts";
import { type Colour, contrast, hexColour, mixed, parseColour } from "./colour.ts";

/** Colours as CSS writes them; those that cannot be read are taken from the built-in theme of that kind. */
export interface EditorColours {
  readonly kind: "light" | "dark" | "high-contrast-light" | "high-contrast-dark";
  readonly background: string;
  readonly text: string;
  /** As CSS names it; the built-in one unless stated. */
  readonly font?: string;
}

/** Least contrast of lines and symbols, and of text (WCAG 2.2, 1.4.11 and 1.4.3), and of text in high contrast (1.4.6). */
const LEAST_GRAPHIC = 3;
const LEAST_TEXT = 4.5;
const LEAST_STRONG_TEXT = 7;
const BLACK: Colour = [0, 0, 0];
const WHITE: Colour = [255, 255, 255];
/**
 * Okabe and Ito, "Color Universal Design" (2008), in the order of use: where one of the first four is too near to the
 * background a later one steps in.
 */
const SERIES = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#56B4E9", "#E69F00", "#F0E442"];
const VERMILLION: Colour = [0xd5, 0x5e, 0x00];

/** A theme on the editor's background, with the editor's text where that can be read on it. */
export function editorTheme({ kind, background, text, font }: EditorColours): ChartTheme {
  const highContrast = kind.startsWith("high-contrast");
  const isDark = kind.endsWith("dark");
  const known = isDark ? DARK_THEME : LIGHT_THEME;
  const far = isDark ? WHITE : BLACK;
  const under = isDark ? BLACK : WHITE;
  const paper = parseColour(background, under) ?? parseColour(known.background, under) ?? under;
  const least = highContrast ? LEAST_STRONG_TEXT : LEAST_TEXT;
  const ink = readable(parseColour(text, paper) ?? far, paper, least);
  /** The ink as faint as `share` of it, but never below the contrast. */
  const faint = (share: number, contrastWanted: number): string => {
    for (let more = share; more < 1; more += 0.05) {
      const colour = mixed(paper, ink, more);
      if (contrast(colour, paper) >= contrastWanted) return hexColour(colour);
    }
    return hexColour(ink);
  };
  const shade = (share: number) => hexColour(mixed(paper, VERMILLION, share));
  const clear = (contrastWanted: number) =>
    SERIES.filter((entry) => contrast(parseColour(entry, paper) ?? paper, paper) >= contrastWanted);
  const strong = clear(LEAST_TEXT);
  const series = highContrast && strong.length >= 4 ? strong : clear(LEAST_GRAPHIC);
  const inSeries = (at: number) => series[at] ?? hexColour(ink);
  return {
    font: font === undefined || font.trim() === "" ? CHART_FONT : font,
    background: hexColour(paper),
    text: hexColour(ink),
    quiet: highContrast ? hexColour(ink) : faint(0.68, LEAST_TEXT),
    axis: highContrast ? hexColour(ink) : faint(0.45, LEAST_GRAPHIC),
    grid: faint(0.1, 1),
    baseline: faint(highContrast ? 0.75 : 0.5, highContrast ? LEAST_TEXT : LEAST_GRAPHIC),
    series: [inSeries(0), inSeries(1), inSeries(2), inSeries(3)],
    fallBack: shade(isDark ? 0.17 : 0.14),
    unresolved: shade(isDark ? 0.08 : 0.06),
    band: faint(highContrast ? 0.25 : 0.1, 1),
    highContrast,
  };
}

/** The colour, or of black and white the one that stands out more, where it is too near to the ground. */
function readable(colour: Colour, ground: Colour, least: number): Colour {
  if (contrast(colour, ground) >= least) return colour;
  return contrast(BLACK, ground) > contrast(WHITE, ground) ? BLACK : WHITE;
}
