// The lower panel of a ladder: how far each step is off the square root law, beside an ideal nozzle and the fitted law.
import { type DrawnPanel, lineRows } from "./chart-frame.ts";
import { type Box, boxesAlong, type Corner } from "./chart-labels.ts";
import { type Json, lines, pieces, ring, symbols, texts } from "./chart-layers.ts";
import { LABEL_HEIGHT, labelRows, labelWish, type Plot, px, py } from "./chart-plot.ts";
import { chartScale } from "./chart-scale.ts";
import { type LadderDrawing, type Place, stepLook } from "./ladder-drawing.ts";

const TICKS = 4;
/** From a line to its name, in pixels. */
const GAP = 6;
const HALF_DOT = 5;

export function ladderLawStrip(drawing: LadderDrawing): DrawnPanel {
  const { x, width, left, theme, steps, fitted, nozzle, root } = drawing;
  const [color] = theme.series;
  const offs = [
    ...steps.flatMap(({ off, reach }) => [off + reach, off - reach]),
    ...fitted.map(({ off }) => off),
  ];
  const height = Math.round(Math.min(200, Math.max(120, width * 0.26)));
  const y = chartScale(
    offs.map((off) => 100 * off),
    TICKS,
    true,
  );
  const plot: Plot = { x, y, width, height };
  const percent = (places: readonly Place[]) => places.map((place) => ({ x: place.x, y: 100 * place.off }));
  /** What lies beyond the axis is not drawn at its edge, where it would say something else. */
  const shown = percent(nozzle).filter((place) => place.y >= y.low && place.y <= y.high);
  const quiet = { color: theme.quiet, width: 1.2 };
  const bars = steps.map(
    ({ x: at, off, reach }): Json => ({
      x: at,
      x2: at,
      y: 100 * (off - reach),
      y2: 100 * (off + reach),
      color,
      width: 1.2,
      dash: [1, 0],
    }),
  );
  const look = stepLook(drawing);
  return {
    panel: {
      ...plot,
      title: "Off the square root law, %",
      indent: left,
      layers: [
        lines("law-lines"),
        pieces("off-bars"),
        symbols("offs", "pointed"),
        ring("offs", theme),
        texts("off-labels"),
      ],
    },
    data: {
      "law-lines": [
        ...lineRows(percent(root), "root", { ...quiet, dash: [1, 0] }),
        ...lineRows(shown, "nozzle", { ...quiet, dash: [4, 3] }),
        ...lineRows(percent(fitted), "fit", { color, width: 1.6, dash: [1, 0] }),
      ],
      "off-bars": bars,
      offs: steps.map(({ x: at, off, told }) => ({ x: at, y: 100 * off, ...look, ...told })),
      "off-labels": nozzleLabel(drawing, plot, shown),
    },
  };
}

/** The nozzle's line by its name, wherever along it there is room beside steps and bars. */
function nozzleLabel(
  { theme, steps, fitted, root }: LadderDrawing,
  plot: Plot,
  line: readonly { readonly x: number; readonly y: number }[],
): readonly Json[] {
  if (line.length < 2) return [];
  const spots = line.map((place) => ({ left: px(plot, place.x), top: py(plot, place.y) }));
  const wish = labelWish(["ideal nozzle", "nozzle"], theme.quiet, (width) =>
    spots.toReversed().flatMap(({ left, top }): Corner[] => [
      [left + GAP, top - LABEL_HEIGHT],
      [left - GAP - width, top],
      [left - GAP - width, top - LABEL_HEIGHT],
      [left + GAP, top],
    ]),
  );
  const along = (places: readonly { readonly left: number; readonly top: number }[]): readonly Box[] =>
    places.slice(1).flatMap((to, at) => {
      const from = places[at] ?? to;
      return boxesAlong(from.left, from.top, to.left, to.top);
    });
  const spotsOf = (places: readonly Place[]) =>
    places.map(({ x, off }) => ({ left: px(plot, x), top: py(plot, 100 * off) }));
  const kept = steps.map(({ x, off, reach }): Box => {
    const [top, bottom] = [py(plot, 100 * (off + reach)), py(plot, 100 * (off - reach))];
    return { left: px(plot, x) - HALF_DOT, top, width: 2 * HALF_DOT, height: bottom - top };
  });
  const obstacles = [spots, spotsOf(fitted), spotsOf(root)].flatMap(along);
  return labelRows(plot, [wish], obstacles, kept);
}
