// What the panels of one chart have in common: runs and their styles, the lift axis, and the width of the plot.
import type { RunResult } from "../model/result.ts";
import type { Differences } from "./chart-differences.ts";
import type { Json, Panel } from "./chart-layers.ts";
import type { ChartAxes, DrawnRun, LinePoint } from "./chart-run.ts";
import type { ChartScale } from "./chart-scale.ts";
import type { RunStyle } from "./chart-style.ts";
import type { ChartTheme } from "./chart-theme.ts";

/** A run with its look. */
export interface StyledRun extends DrawnRun {
  readonly style: RunStyle;
  /** What stands at its line's end. */
  readonly label: string;
}

export interface ChartFrame {
  readonly lead: RunResult;
  /** Whether signs without a name are surely the leading run's: it is alone, or the main one among others. */
  readonly leads: boolean;
  /** Drawn in this order, so that the leading run comes last and lies on top. */
  readonly runs: readonly StyledRun[];
  /** More equals than colours: two are drawn in colour, the rest as their background. */
  readonly isCrowd: boolean;
  readonly differences?: Differences;
  readonly axes: ChartAxes;
  readonly theme: ChartTheme;
  readonly x: ChartScale;
  /** Whether a part of the lift axis is shown; flow then need not begin at zero. */
  readonly isStretch: boolean;
  /** Of the plot inside the axes, in pixels. */
  readonly width: number;
  /** Room to the left of the lift axis's beginning, in pixels. */
  readonly left: number;
  /** Room to the right of the plot, in pixels. */
  readonly right: number;
}

/** A panel and the rows of the data that its layers name. */
export interface DrawnPanel {
  readonly panel: Omit<Panel, "lift">;
  readonly data: Readonly<Record<string, readonly Json[]>>;
}

/** Gap between the plot and what stands in the right margin, in pixels. */
export const MARGIN_GAP = 10;

/** Rows of a line layer: the pieces between neighbouring points of one run's branch. */
export function lineRows(points: readonly LinePoint[], series: string, look: Json): Json[] {
  return points.map((point, order) => ({ x: point.x, y: point.y, order, series, ...look }));
}
