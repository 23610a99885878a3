// Beside the section of a velocity map: each place's speed at its height, and the mean of each row.
import { DEAD_SHARE, type MapStatistics } from "../calc/velocity-map.ts";
import { fromSI } from "../quantity/unit.ts";
import { type DrawnPanel, lineRows } from "./chart-frame.ts";
import type { Corner } from "./chart-labels.ts";
import { lines, pieces, ring, symbols, texts } from "./chart-layers.ts";
import { LABEL_HEIGHT, labelRows, labelWish, type Plot, px, py } from "./chart-plot.ts";
import { chartScale } from "./chart-scale.ts";
import type { ChartTheme } from "./chart-theme.ts";
import type { DrawnPlace } from "./map-section.ts";
import type { MapUnits } from "./map-units.ts";

/** Between two numbers of the speed axis, about. */
const TICK = 70;
const DOT = 30;
/** Half of what a dot takes, in pixels. */
const HALF_DOT = 5;

/** The panel, `width` pixels wide, on the heights of the section. */
export function mapProfile(
  places: readonly DrawnPlace[],
  { mean }: MapStatistics,
  section: Plot,
  width: number,
  { speed: unit }: MapUnits,
  theme: ChartTheme,
): DrawnPanel {
  const x = chartScale([0, ...places.map(({ speed }) => speed)], width / TICK, true);
  const plot: Plot = { x, y: { ...section.y, ticks: [] }, width, height: section.height };
  const middle = fromSI(mean, unit);
  const upright = { y: plot.y.low, y2: plot.y.high, color: theme.axis, width: 1 };
  const color = theme.series[0];
  const levels = [
    { at: middle, text: "mean", dash: [1, 0] },
    { at: DEAD_SHARE * middle, text: "half the mean", dash: [4, 3] },
  ];
  const wishes = levels.map(({ at, text }) =>
    labelWish([text, ...(text === "mean" ? [] : ["half"])], theme.quiet, (wide) =>
      [4, plot.height - LABEL_HEIGHT - 4].flatMap((top): Corner[] => [
        [px(plot, at) + 5, top],
        [px(plot, at) - 5 - wide, top],
      ]),
    ),
  );
  const uprights = levels.map(({ at }) => ({
    left: px(plot, at) - 1,
    top: 0,
    width: 2,
    height: plot.height,
  }));
  const dots = places.map(({ speed, y }) => ({
    left: px(plot, speed) - HALF_DOT,
    top: py(plot, y) - HALF_DOT,
    width: 2 * HALF_DOT,
    height: 2 * HALF_DOT,
  }));
  const rows = rowMeans(places);
  return {
    panel: {
      ...plot,
      title: "Speed at each y",
      indent: 0,
      layers: [
        pieces("profile-levels"),
        lines("profile-means"),
        symbols("profile-places", "pointed"),
        ring("profile-places", theme),
        texts("profile-labels"),
      ],
    },
    data: {
      "profile-levels": levels.map(({ at, dash }) => ({ ...upright, x: at, x2: at, dash })),
      "profile-means": lineRows(rows, "means", { color, width: 1.4, dash: [1, 0] }),
      "profile-places": places.map(({ speed, y, fill, told }) => ({
        ...told,
        x: speed,
        y,
        shape: "circle",
        size: DOT,
        color,
        fill,
        width: 1.2,
      })),
      "profile-labels": labelRows(plot, wishes, [], [...uprights, ...dots]),
    },
  };
}

/** The mean speed of each row of places from the lowest up; nothing where places do not stand in rows. */
function rowMeans(places: readonly DrawnPlace[]): readonly { readonly x: number; readonly y: number }[] {
  const rows = Map.groupBy(places, ({ y }) => y);
  if (rows.size < 2 || 2 * rows.size > places.length) return [];
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([y, row]) => ({ x: row.reduce((sum, { speed }) => sum + speed, 0) / row.length, y }));
}
