// What every picture has around its panels: size, title, the facts under it, and what it says when there is nothing to draw.
import { chartConfig, HEADING, type Json, LABEL_SIZE, NOTE_SIZE } from "./chart-layers.ts";
import { clipText, HARD_SPACE, wrapText } from "./chart-text.ts";
import type { ChartTheme } from "./chart-theme.ts";

/** A Vega-Lite 6 specification with its data inside: plain JSON; texts of the record stand in it as data and titles only. */
export type VegaLiteSpec = Json;

const SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json";
const DEFAULT_WIDTH = 760;
const LEAST_WIDTH = 280;
/** Around the whole picture, in pixels. */
export const PADDING = 16;
const TITLE_SIZE = 15;
const TITLE_LINES = 2;
const NOTE_LINES = 4;
const EMPTY_HEIGHT = 160;

/** Of the whole picture, in pixels: what was asked for, unless that is too narrow or no number. */
export function pictureWidth(asked: number | undefined): number {
  return Math.max(LEAST_WIDTH, Math.round(asked ?? DEFAULT_WIDTH) || DEFAULT_WIDTH);
}

/** Everything around the panels; `indent` is the room to the left of their plots. */
export function shellOf(
  title: string,
  facts: string,
  outer: number,
  indent: number,
  theme: ChartTheme,
): Json {
  const width = outer - 2 * PADDING;
  const text = wrapText(title, width, TITLE_SIZE, TITLE_LINES, true);
  const subtitle = wrapText(facts, width, NOTE_SIZE, NOTE_LINES);
  return {
    $schema: SCHEMA,
    description: [title, facts]
      .filter((part) => part !== "")
      .join(". ")
      .replaceAll(HARD_SPACE, " "),
    background: theme.background,
    padding: PADDING,
    bounds: "flush",
    spacing: HEADING + 14,
    ...(text.length > 0 && { title: titleOf(text, subtitle, indent) }),
    config: chartConfig(theme),
  };
}

function titleOf(text: readonly string[], subtitle: readonly string[], indent: number): Json {
  return {
    text,
    ...(subtitle.length > 0 && {
      subtitle,
      subtitleFontSize: NOTE_SIZE,
      subtitleLineHeight: NOTE_SIZE + 4,
    }),
    anchor: "start",
    frame: "group",
    fontSize: TITLE_SIZE,
    lineHeight: TITLE_SIZE + 4,
    fontWeight: "bold",
    dx: 0 - indent,
    offset: HEADING,
    subtitlePadding: 6,
  };
}

/** A picture that says why there is nothing in it. */
export function emptyChart(message: string, title: string, outer: number, theme: ChartTheme): VegaLiteSpec {
  const width = outer - 2 * PADDING;
  return {
    ...shellOf(title, "", outer, 0, theme),
    datasets: { message: [{ text: clipText(message, width, LABEL_SIZE) }] },
    vconcat: [
      {
        width,
        height: EMPTY_HEIGHT,
        view: { stroke: null },
        data: { name: "message" },
        mark: { type: "text", fontSize: LABEL_SIZE, color: theme.quiet },
        encoding: { text: { field: "text", type: "nominal" } },
      },
    ],
  };
}
