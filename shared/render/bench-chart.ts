// Draws benches as a Vega-Lite picture: how long each takes to settle on lift, and what its check plates say over time.
import { BENCH_LEFT, type BenchPanel, platePanel, settlePanel } from "./bench-panels.ts";
import type { BenchPage } from "./bench-text.ts";
import { chartConfig, HEADING, type Json, LABEL_SIZE } from "./chart-layers.ts";
import type { VegaLiteSpec } from "./chart-shell.ts";
import { clipText, wrapText } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";

const SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json";
const WIDTH = 760;
const PADDING = 16;
const RIGHT = 128;
const TITLE_SIZE = 15;
const NOTE_SIZE = 10.5;
/** A picture of more is no picture any more. */
const MOST_PANELS = 24;
const EMPTY_HEIGHT = 120;

/** The picture of the benches; without anything to draw it says so in words. */
export function benchChart(pages: readonly BenchPage[], theme: ChartTheme = LIGHT_THEME): VegaLiteSpec {
  const width = WIDTH - 2 * PADDING - BENCH_LEFT - RIGHT;
  const all = pages.flatMap(({ report, units }, index): readonly BenchPanel[] => [
    ...settlePanel(report, units, { name: `settle-${index}`, width, theme }),
    ...report.plates.flatMap((plate, at) =>
      platePanel(report, plate, { name: `plate-${index}-${at}`, width, theme }),
    ),
  ]);
  const panels = all.slice(0, MOST_PANELS);
  const hasSettle = pages.some(({ report }) => report.settle !== undefined);
  const hasPlates = pages.some(({ report }) => report.plates.length > 0);
  const notes = [
    ...(hasSettle
      ? ["settle times: filled circles intake, open squares exhaust; the line joins the medians"]
      : []),
    ...(hasPlates ? ["check plates: readings over the certified flow, bars: expanded uncertainty"] : []),
    ...(all.length > panels.length ? [`${all.length - panels.length} more are not drawn`] : []),
  ];
  if (panels.length === 0) return emptyPicture(theme);
  return {
    ...shell(notes, theme),
    datasets: Object.assign({}, ...panels.map(({ data }) => data)),
    vconcat: panels.map(({ spec }) => spec),
  };
}

function shell(notes: readonly string[], theme: ChartTheme): Json {
  const title = "What the records show of the benches";
  const subtitle = wrapText(notes.join("; "), WIDTH - 2 * PADDING, NOTE_SIZE, 3);
  return {
    $schema: SCHEMA,
    description: [title, ...notes].join(". "),
    background: theme.background,
    padding: PADDING,
    bounds: "flush",
    spacing: HEADING + 44,
    title: {
      text: [title],
      ...(subtitle.length > 0 && {
        subtitle,
        subtitleFontSize: NOTE_SIZE,
        subtitleLineHeight: NOTE_SIZE + 4,
      }),
      anchor: "start",
      frame: "group",
      fontSize: TITLE_SIZE,
      fontWeight: "bold",
      dx: -BENCH_LEFT,
      offset: HEADING,
      subtitlePadding: 6,
    },
    config: chartConfig(theme),
  };
}

function emptyPicture(theme: ChartTheme): VegaLiteSpec {
  const width = WIDTH - 2 * PADDING;
  const message = "Nothing to draw: no settle times and no plate checks in these records";
  return {
    ...shell([], theme),
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
