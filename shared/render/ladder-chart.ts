// Draws a ladder as a Vega-Lite picture: flow on depression, both logarithmic, and how far it is off the square root law.
import type { LadderResult } from "../model/ladder-result.ts";
import { fromSI } from "../quantity/unit.ts";
import { captionPanel } from "./chart-caption.ts";
import { lineRows } from "./chart-frame.ts";
import {
  type Json,
  LABEL_SIZE,
  lines,
  type Panel,
  panelSpec,
  pieces,
  strongRows,
  symbols,
  texts,
} from "./chart-layers.ts";
import { type ChartScale, chartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText, textWidth } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { ladderFacts } from "./ladder-facts.ts";
import { ladderUnits } from "./ladder-units.ts";
import { titleOf } from "./table-blocks.ts";
import type { WantedUnits } from "./wanted-units.ts";

const RIGHT = 20;
const SOLID = [1, 0];
/** Numbers that an axis of ratios may carry within a power of ten, from few to many. */
const DECADES = [
  [1],
  [1, 3],
  [1, 2, 5],
  [1, 1.5, 2, 3, 4, 5, 7],
  [1, 1.2, 1.4, 1.6, 1.8, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9],
];

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
  const { ladder, setup, points, law, kink, nozzle } = result;
  const title = cleanText(titleOf("ladder", ladder.lift, setup.run.id));
  if (law === undefined) {
    return emptyChart("No power to draw: fewer than three steps can be used", title, outer, theme);
  }
  const units = ladderUnits(result, options.units);
  const inDepression = (value: number) => Math.log10(fromSI(value, units.depression));
  const inFlow = (log: number) => (log - Math.log(units.flow.factor)) / Math.LN10;
  const spots = points.map(({ depression, flow, uncertainty }) => ({
    x: inDepression(depression),
    y: inFlow(Math.log(flow)),
    log: Math.log(depression / law.middle),
    off: Math.log(flow) - law.level - 0.5 * Math.log(depression / law.middle),
    u: 2 * uncertainty,
  }));
  const left = 48;
  const width = inner - left - RIGHT;
  const xs = spots.map(({ x }) => x);
  const x = ratioScale(Math.min(...xs), Math.max(...xs), width / 70);
  const ys = spots.map(({ y }) => y);
  const height = Math.round(Math.min(340, Math.max(180, width * 0.45)));
  const y = ratioScale(Math.min(...ys), Math.max(...ys), height / 45);
  const color = theme.series[0];
  /** Deviations of a law from the square root law through the middle of the points, at a place. */
  const fit = (log: number): number => {
    if (kink === undefined) return (law.exponent - 0.5) * log;
    const at = Math.log(kink.depression / law.middle);
    const power = log < at ? kink.below : kink.above;
    return kink.level - law.level + power * (log - at) - 0.5 * log;
  };
  const logs = gridOf(spots.map(({ log }) => log));
  const across = (deviation: (log: number) => number) =>
    logs.map((log) => ({
      x: inDepression(law.middle * Math.exp(log)),
      off: deviation(log),
      y: inFlow(law.level + 0.5 * log + deviation(log)),
    }));
  const fitted = across(fit);
  const offs = [...spots.flatMap(({ off, u }) => [off + u, off - u]), ...fitted.map(({ off }) => off)];
  const strip = chartScale(
    offs.map((off) => 100 * off),
    4,
    true,
  );
  const look = { color, width: 1.6, dash: SOLID };
  const quiet = { color: theme.quiet, width: 1.2, dash: [4, 3] };
  const dot = { shape: "circle", size: 34, color, fill: color, width: 1 };
  const noz = nozzle === undefined ? [] : across((log) => (nozzle - 0.5) * log);
  const label = (
    text: string,
    at: { readonly x: number; readonly y: number } | undefined,
    scale: ChartScale,
    high: number,
    shift: number,
  ): Json[] => {
    if (at === undefined) return [];
    const wide = textWidth(text, LABEL_SIZE);
    const pixels = Math.min(width - wide, Math.max(0, toPixels(x, width, at.x) - wide - 8));
    const level = Math.min(high - 8, Math.max(8, toPixels(scale, high, at.y) + shift));
    return [{ x: fromPixels(x, width, pixels), y: fromPixels(scale, high, level), text, color: theme.quiet }];
  };
  const stripHeight = Math.round(Math.min(200, Math.max(120, width * 0.26)));
  const percent = (rows: readonly { readonly x: number; readonly off: number }[]) =>
    rows.map((row) => ({ x: row.x, y: 100 * row.off }));
  const panels: { readonly panel: Omit<Panel, "indent">; readonly data: Record<string, readonly Json[]> }[] =
    [
      {
        panel: {
          width,
          height,
          x,
          y,
          title: `Flow at each depression, ${units.flow.symbol}`,
          layers: [lines("fit-lines"), symbols("steps", "all")],
        },
        data: {
          "fit-lines": lineRows(fitted, "fit", look),
          steps: spots.map((spot, at) => ({ x: spot.x, y: spot.y, ...dot, about: stepWords(result, at) })),
        },
      },
      {
        panel: {
          width,
          height: stripHeight,
          x,
          y: strip,
          title: "Off the square root law, %",
          layers: [lines("law-lines"), pieces("off-bars"), symbols("offs", "none"), texts("off-labels")],
        },
        data: {
          "law-lines": [
            ...lineRows(percent(across(() => 0)), "root", { ...quiet, dash: SOLID }),
            ...lineRows(
              percent(noz).map((row) => ({ ...row, y: Math.min(strip.high, Math.max(strip.low, row.y)) })),
              "nozzle",
              quiet,
            ),
            ...lineRows(percent(fitted), "fit", look),
          ],
          "off-bars": spots.map(({ x: at, off, u }) => ({
            x: at,
            x2: at,
            y: 100 * (off - u),
            y2: 100 * (off + u),
            color,
            width: 1.2,
            dash: SOLID,
          })),
          offs: spots.map((spot) => ({ x: spot.x, y: 100 * spot.off, ...dot })),
          "off-labels":
            noz.length === 0 ? [] : label("ideal nozzle", percent(noz).at(-1), strip, stripHeight, -12),
        },
      },
    ];
  const notes = `bars: two standard uncertainties; line: the fitted ${kink === undefined ? "power" : "powers"}; dashed: what an ideal nozzle does over these depressions`;
  const caption = captionPanel({ left, theme, width }, notes, notes, inner);
  const facts = ladderFacts(result, options.units)
    .filter(({ label: name }) => name !== "steps")
    .map(({ label: name, words }) => `${name} ${words}`);
  const data = [...panels, caption].flatMap((panel) => Object.entries(panel.data));
  return {
    ...shellOf(title, cleanText(facts.join("; ")), outer, left, theme),
    datasets: Object.fromEntries(data.map(([name, rows]) => [name, strongRows(rows, theme)])),
    vconcat: [
      ...panels.map(({ panel }, index) => {
        const spec = panelSpec(
          { ...panel, indent: left, ...(index === 1 && { lift: `Depression, ${units.depression.symbol}` }) },
          theme,
        );
        return withPowers(spec, index === 0 ? ["x", "y"] : ["x"]);
      }),
      caption.spec,
    ],
  };
}

function stepWords({ points }: LadderResult, at: number): string {
  const { depression, flow } = points[at] ?? { depression: 0, flow: 0 };
  return `step ${at + 1}: ${depression.toFixed(0)} Pa, ${flow.toFixed(4)} m3/s`;
}

/** Places from the first to the last of the values and a little beyond, so that a bend shows. */
function gridOf(values: readonly number[]): readonly number[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return Array.from({ length: 81 }, (_, at) => low + ((high - low) * at) / 80);
}

/** An axis over logarithms to base ten whose ticks are round numbers, about `count` of them. */
function ratioScale(low: number, high: number, count: number): ChartScale {
  const room = Math.max(0.02, (high - low) * 0.06);
  const [from, to] = [low - room, high + room];
  const ticksOf = (steps: readonly number[]) => {
    const ticks: number[] = [];
    for (let power = Math.floor(from); power <= Math.ceil(to); power++) {
      for (const step of steps) {
        const tick = power + Math.log10(step);
        if (tick >= from && tick <= to) ticks.push(tick);
      }
    }
    return ticks;
  };
  const all = DECADES.map(ticksOf);
  const fitting = all.filter((ticks) => ticks.length <= Math.max(2, count));
  const ticks = fitting.at(-1) ?? all[0] ?? [];
  return { low: from, high: to, ticks, decimals: 6 };
}

/** Ticks that say the number and not its logarithm. */
function withPowers(spec: Json, channels: readonly ("x" | "y")[]): Json {
  const encoding = spec["encoding"] as Record<string, { readonly axis: Json }>;
  const changed = Object.fromEntries(
    channels.map((channel) => {
      const { format: _, ...axis } = encoding[channel]?.axis ?? {};
      return [
        channel,
        { ...encoding[channel], axis: { ...axis, labelExpr: "format(pow(10, datum.value), '.3~r')" } },
      ];
    }),
  );
  return { ...spec, encoding: { ...encoding, ...changed } };
}
