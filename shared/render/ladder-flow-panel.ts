// The upper panel of a ladder: flow on depression, both as ratios.
import { extent } from "../calc/extent.ts";
import { type DrawnPanel, lineRows } from "./chart-frame.ts";
import { lines, ring, symbols } from "./chart-layers.ts";
import { type LadderDrawing, stepLook } from "./ladder-drawing.ts";
import { ratioScale } from "./ratio-scale.ts";

/** Between two numbers of the flow axis, about. */
const TICK = 45;

export function ladderFlowPanel(drawing: LadderDrawing): DrawnPanel {
  const { x, width, left, units, theme, steps, fitted } = drawing;
  const height = Math.round(Math.min(340, Math.max(180, width * 0.45)));
  const ys = steps.map(({ y }) => y);
  const look = stepLook(drawing);
  return {
    panel: {
      width,
      height,
      x,
      y: ratioScale(...extent(ys), height / TICK),
      title: `Flow at each depression, ${units.flow.symbol}`,
      indent: left,
      layers: [lines("fit-lines"), symbols("steps", "all"), ring("steps", theme)],
    },
    data: {
      "fit-lines": lineRows(fitted, "fit", { color: theme.series[0], width: 1.6, dash: [1, 0] }),
      steps: steps.map(({ x: at, y, told }) => ({ x: at, y, ...look, ...told })),
    },
  };
}
