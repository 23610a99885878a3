// Draws a trace as a Vega-Lite picture: depression and apparent area on time, with what was found in them.
import type { TraceResult } from "../model/trace-result.ts";
import { captionPanel } from "./chart-caption.ts";
import { AXIS_SIZE, CURSOR_PARAM, panelSpec, strongRows } from "./chart-layers.ts";
import { markOf } from "./chart-mark.ts";
import { type ChartScale, tickText } from "./chart-scale.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText, textWidth } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { titleOf } from "./table-blocks.ts";
import { areaPanel } from "./trace-area-panel.ts";
import { depressionPanel } from "./trace-depression-panel.ts";
import type { TraceDrawing, TracePanel } from "./trace-drawing.ts";
import { approachNumbers } from "./trace-facts.ts";
import { sampleLines } from "./trace-samples.ts";
import { areaScale, depressionScale, timeScale } from "./trace-scales.ts";
import { traceUnits } from "./trace-units.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

const RIGHT = 16;

export interface TraceChartOptions {
  /** Of the whole picture, in pixels. */
  readonly width?: number;
  readonly theme?: ChartTheme;
  /** Units to show instead of the record's own, each for its dimension. */
  readonly units?: WantedUnits;
}

/** The picture of a trace; one that cannot be used says so. */
export function traceChart(result: TraceResult, options: TraceChartOptions = {}): VegaLiteSpec {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const inner = outer - 2 * PADDING;
  const { trace, setup, interval, approach, flow } = result;
  const name = titleOf("trace", trace.lift, setup.run.id);
  const title = cleanText(name);
  if (interval === 0) return emptyChart("No sample of this trace can be used", title, outer, theme);
  const units = traceUnits(result, options.units);
  const lineOf = sampleLines(result);
  const pressures = depressionScale(result, units);
  const areas = areaScale(result, units);
  const left = leftMargin([pressures, ...(areas === undefined ? [] : [areas])]);
  const width = inner - left - RIGHT;
  const x = timeScale(result, units, width);
  const drawing = (y: ChartScale, height: number): TraceDrawing => ({
    ...{ result, units, wanted: options.units ?? [], theme, x, y, width, height: Math.round(height) },
    ...{ obstacles: [], kept: [], wishes: [], block: name },
    placeOf: (time) => {
      const line = time === undefined ? undefined : lineOf.get(time);
      return line === undefined ? {} : markOf(name, line);
    },
  });
  const panels: TracePanel[] = [
    depressionPanel(drawing(pressures, Math.min(300, Math.max(150, width * 0.36)))),
  ];
  if (areas !== undefined && flow !== undefined) {
    panels.push(areaPanel(drawing(areas, Math.min(240, Math.max(130, width * 0.3))), flow));
  }
  const notes = notesOf(result, options.units);
  const caption = captionPanel({ left, theme, width }, notes, notes, inner);
  const facts = [
    ...(setup.bench === undefined ? [] : [`bench ${setup.bench.id}`]),
    ...(setup.port === undefined ? [] : [`port ${setup.port.id}`]),
    ...(approach === undefined ? [] : [approachNumbers(approach, units)]),
  ];
  const data = [...panels, caption].flatMap((panel) => Object.entries(panel.data));
  return {
    ...shellOf(title, cleanText(facts.join("; ")), outer, left, theme),
    params: [{ name: CURSOR_PARAM, value: "" }],
    datasets: Object.fromEntries(data.map(([name, rows]) => [name, strongRows(rows, theme)])),
    vconcat: [
      ...panels.map(({ panel }, index) =>
        panelSpec(
          {
            ...panel,
            indent: left,
            ...(index === panels.length - 1 && { lift: `Time since opening, ${units.time.symbol}` }),
          },
          theme,
        ),
      ),
      caption.spec,
    ],
  };
}

/** Room for the numbers of all upright axes. */
function leftMargin(scales: readonly ChartScale[]): number {
  const widest = scales.flatMap((scale) =>
    scale.ticks.map((tick) => textWidth(tickText(scale, tick), AXIS_SIZE)),
  );
  return Math.ceil(Math.max(44, 10 + Math.max(0, ...widest)));
}

function notesOf({ setup, approach, steady, steps, flow }: TraceResult, wanted: WantedUnits = []): string {
  return [
    `thin lines: the band around ${quantityIn(setup.target.value, wanted)}`,
    ...(approach === undefined ? [] : ["dotted: the fitted approach, ± standard errors"]),
    ...(steady === undefined ? [] : ["grey: steady"]),
    ...(steps.length === 0 ? [] : ["dashed: the area steps by more than scatter"]),
    ...(flow === undefined ? ["the trace has no flow, so no area"] : []),
  ].join("; ");
}
