// The colours and the font of a chart, as plain values that an editor may replace by its own.

/** Colours as CSS writes them; `series` has four, each 3:1 or more against the background. */
export interface ChartTheme {
  readonly font: string;
  readonly background: string;
  readonly text: string;
  /** Axes' numbers, notes, and whatever should stand back. */
  readonly quiet: string;
  readonly axis: string;
  readonly grid: string;
  readonly baseline: string;
  readonly series: readonly [string, string, string, string];
  /** Shade of a fall-back that is resolved, and of one that is not. */
  readonly fallBack: string;
  readonly unresolved: string;
  /** Ground of a tolerance, and of gains that the bench does not resolve. */
  readonly band: string;
  /** Lines at least twice as wide, and no grid. */
  readonly highContrast: boolean;
}

export const CHART_FONT = '"DejaVu Sans", sans-serif';
/** Okabe and Ito, "Color Universal Design" (2008): the four that keep 3:1 on white and on near-black alike. */
export const SERIES = ["#0072B2", "#D55E00", "#009E73", "#CC79A7"] as const;

export const LIGHT_THEME: ChartTheme = {
  font: CHART_FONT,
  background: "#ffffff",
  text: "#1d2126",
  quiet: "#5c646d",
  axis: "#8b929a",
  grid: "#e8eaed",
  baseline: "#868c93",
  series: SERIES,
  fallBack: "#fbe8da",
  unresolved: "#fdf5ef",
  band: "#eceef1",
  highContrast: false,
};

export const DARK_THEME: ChartTheme = {
  font: CHART_FONT,
  background: "#1e1e1e",
  text: "#e8e8e8",
  quiet: "#a9afb6",
  axis: "#7d848c",
  grid: "#323437",
  baseline: "#90969d",
  series: SERIES,
  fallBack: "#41301f",
  unresolved: "#2d2620",
  band: "#2f3236",
  highContrast: false,
};
