// The drawing vocabulary of a chart in Vega-Lite: panels over one lift axis, and layers whose every look is data.
import { type ChartScale, tickFormat } from "./chart-scale.ts";
import type { ChartTheme } from "./chart-theme.ts";

/** Plain JSON. */
export type Json = Readonly<Record<string, unknown>>;

export interface Panel {
  readonly width: number;
  readonly height: number;
  readonly x: ChartScale;
  readonly y: ChartScale;
  /** What the panel shows, written above it; its left edge stands this many pixels left of the axis. */
  readonly title: string;
  readonly indent: number;
  /** Title of the lift axis; only the lowest panel has one, and the lifts' numbers with it. */
  readonly lift?: string;
  /** A plane, with a line at its left edge instead of a grid. */
  readonly isPlane?: boolean;
  readonly layers: readonly Json[];
}

/**
 * The parameter that rings a point without drawing the picture anew: "RUN:LINE" as the points' rows have it in `point`,
 * the run's id and the row's line counted from the first line of the run's block. Empty in a picture that stands alone.
 */
export const CURSOR_PARAM = "cursorPoint";

export const AXIS_SIZE = 10.5;
/** Of the facts under the title and the notes under the picture. */
export const NOTE_SIZE = 10.5;
export const LABEL_SIZE = 11;
/** Width of the thinnest line in a picture of high contrast. */
const STRONG_LINE = 2;
/** Height that a title above a panel takes. */
export const HEADING = 26;

export function panelSpec(panel: Panel, theme: ChartTheme): Json {
  const { width, height, x, y, title, indent, lift, isPlane = false, layers } = panel;
  const bottom = lift !== undefined;
  return {
    width,
    height,
    view: { stroke: null },
    encoding: {
      x: {
        field: "x",
        type: "quantitative",
        scale: { domain: [x.low, x.high], nice: false, zero: false },
        axis: {
          title: lift ?? null,
          values: x.ticks,
          format: tickFormat(x),
          grid: false,
          labels: bottom,
          ticks: true,
          tickSize: bottom ? 5 : 3,
          labelPadding: 4,
          titlePadding: 8,
          labelOverlap: false,
          labelFlush: false,
        },
      },
      y: {
        field: "y",
        type: "quantitative",
        scale: { domain: [y.low, y.high], nice: false, zero: false },
        axis: {
          title,
          titleAngle: 0,
          titleAlign: "left",
          titleBaseline: "bottom",
          titleX: 0 - indent,
          titleY: -10,
          titleColor: theme.text,
          values: y.ticks,
          format: tickFormat(y),
          grid: !theme.highContrast && !isPlane,
          domain: isPlane,
          ticks: isPlane,
          labelPadding: isPlane ? 4 : 8,
          labelOverlap: false,
        },
      },
    },
    layer: layers,
  };
}

/** Rectangles: x, y, x2, y2, fill. */
export function rectangles(name: string): Json {
  return {
    data: { name },
    mark: { type: "rect", aria: false },
    encoding: { x2: { field: "x2" }, y2: { field: "y2" }, fill: raw("fill"), stroke: { value: null } },
  };
}

/** One ground between two edges: x, y, y2, fill (the same in all rows). */
export function areas(name: string): Json {
  return {
    data: { name },
    mark: { type: "area", opacity: 1, interpolate: "linear", line: false, aria: false },
    encoding: { y2: { field: "y2" }, fill: raw("fill") },
  };
}

/** Straight pieces: x, y, x2, y2, color, width, dash. */
export function pieces(name: string): Json {
  return {
    data: { name },
    mark: { type: "rule", aria: false },
    encoding: {
      x2: { field: "x2" },
      y2: { field: "y2" },
      color: raw("color"),
      strokeWidth: raw("width", "quantitative"),
      strokeDash: raw("dash"),
    },
  };
}

/** Lines through points in the order of the data: x, y, series, color, width, dash. */
export function lines(name: string): Json {
  return {
    data: { name },
    mark: { type: "line", interpolate: "linear", aria: false, strokeJoin: "round" },
    encoding: {
      detail: { field: "series", type: "nominal" },
      order: { field: "order", type: "quantitative" },
      color: raw("color"),
      strokeWidth: raw("width", "quantitative"),
      strokeDash: raw("dash"),
    },
  };
}

/**
 * Symbols: x, y, shape, size, color, fill, width. Those that are told have their words in `about`: `all` to whom points at
 * one and to screen readers, `pointed` only to the former.
 */
export function symbols(name: string, told: "all" | "pointed" | "none"): Json {
  return {
    data: { name },
    mark: { type: "point", opacity: 1, ...(told !== "all" && { aria: false }) },
    encoding: {
      shape: raw("shape"),
      size: raw("size", "quantitative"),
      stroke: raw("color"),
      fill: raw("fill"),
      strokeWidth: raw("width", "quantitative"),
      ...(told === "all" && { description: { field: "about", type: "nominal" } }),
      ...(told !== "none" && { tooltip: { field: "about", type: "nominal" } }),
    },
  };
}

/** A ring around the symbol whose `point` the parameter names. */
export function ring(name: string, theme: ChartTheme): Json {
  return {
    data: { name },
    transform: [{ filter: `datum.point === ${CURSOR_PARAM}` }],
    mark: {
      type: "point",
      shape: "circle",
      size: 260,
      filled: false,
      stroke: theme.text,
      strokeWidth: 2,
      opacity: 1,
      aria: false,
    },
  };
}

/** Texts that begin at x and are centred on y: x, y, text, color. */
export function texts(name: string): Json {
  return {
    data: { name },
    mark: { type: "text", align: "left", baseline: "middle", fontSize: LABEL_SIZE, aria: false },
    encoding: { text: { field: "text", type: "nominal" }, color: raw("color") },
  };
}

/** The rows with every line as wide as the theme wants it. */
export function strongRows(rows: readonly Json[], theme: ChartTheme): readonly Json[] {
  if (!theme.highContrast) return rows;
  return rows.map((row) => {
    const { width } = row;
    return typeof width === "number" && width < STRONG_LINE ? { ...row, width: STRONG_LINE } : row;
  });
}

/** A look that is taken from the data as it stands. */
function raw(field: string, type: "nominal" | "quantitative" = "nominal"): Json {
  return { field, type, scale: null };
}

/** Looks of everything that is not data. */
export function chartConfig(theme: ChartTheme): Json {
  const width = theme.highContrast ? STRONG_LINE : 1;
  return {
    font: theme.font,
    view: { stroke: null },
    axis: {
      labelColor: theme.quiet,
      labelFontSize: AXIS_SIZE,
      titleColor: theme.quiet,
      titleFontSize: LABEL_SIZE,
      titleFontWeight: "normal",
      titleLimit: 0,
      labelLimit: 0,
      domainColor: theme.axis,
      tickColor: theme.axis,
      gridColor: theme.grid,
      domainWidth: width,
      tickWidth: width,
      gridWidth: 1,
    },
    title: { color: theme.text, subtitleColor: theme.quiet, limit: 0 },
  };
}
