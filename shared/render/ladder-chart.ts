// Draws a ladder as a Vega-Lite picture: flow on depression, both logarithmic, and how far it is off the square root law.
import type { LadderResult } from "../model/ladder-result.ts";
import { captionPanel } from "./chart-caption.ts";
import { CURSOR_PARAM, panelSpec, strongRows } from "./chart-layers.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { ladderDrawing } from "./ladder-drawing.ts";
import { ladderFacts } from "./ladder-facts.ts";
import { ladderFlowPanel } from "./ladder-flow-panel.ts";
import { ladderLawStrip } from "./ladder-law-strip.ts";
import { ladderUnits } from "./ladder-units.ts";
import { withRatios } from "./ratio-scale.ts";
import { titleOf } from "./table-blocks.ts";
import type { WantedUnits } from "./wanted-units.ts";

const LEFT = 48;
const RIGHT = 20;

export interface LadderChartOptions {
  /** Of the whole picture, in pixels. */
  readonly width?: number;
  readonly theme?: ChartTheme;
  /** Units to show instead of the record's own, each for its dimension. */
  readonly units?: WantedUnits;
}

/** The picture of a ladder; one without a fitted power says so. */
export function ladderChart(result: LadderResult, options: LadderChartOptions = {}): VegaLiteSpec {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const inner = outer - 2 * PADDING;
  const { ladder, setup, law, kink, nozzle } = result;
  const name = titleOf("ladder", ladder.lift, setup.run.id);
  if (law === undefined) {
    return emptyChart("No power to draw: fewer than three steps can be used", cleanText(name), outer, theme);
  }
  const units = ladderUnits(result, options.units);
  const width = inner - LEFT - RIGHT;
  const drawing = ladderDrawing(result, law, units, theme, { width, left: LEFT, block: name });
  const panels = [ladderFlowPanel(drawing), ladderLawStrip(drawing)];
  const notes = [
    "bars: two standard uncertainties",
    `line: the fitted ${kink === undefined ? "power" : "powers"}`,
    ...(nozzle === undefined ? [] : ["dashed: what an ideal nozzle does over these depressions"]),
  ].join("; ");
  const caption = captionPanel({ left: LEFT, theme, width }, notes, notes, inner);
  const facts = ladderFacts(result, options.units)
    .filter(({ label }) => label !== "steps")
    .map(({ label, words }) => `${label} ${words}`);
  const data = [...panels, caption].flatMap((panel) => Object.entries(panel.data));
  return {
    ...shellOf(cleanText(name), cleanText(facts.join("; ")), outer, LEFT, theme),
    params: [{ name: CURSOR_PARAM, value: "" }],
    datasets: Object.fromEntries(data.map(([key, rows]) => [key, strongRows(rows, theme)])),
    vconcat: [
      ...panels.map(({ panel }, index) => {
        const isLast = index === panels.length - 1;
        const lift = isLast && { lift: `Depression, ${units.depression.symbol}` };
        return withRatios(panelSpec({ ...panel, ...lift }, theme), isLast ? ["x"] : ["x", "y"]);
      }),
      caption.spec,
    ],
  };
}
