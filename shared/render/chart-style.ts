// Tells the runs of a chart apart: by colour, and without colour by dash and symbol.
import type { ChartRun } from "./chart-run.ts";
import type { ChartTheme } from "./chart-theme.ts";

export interface RunStyle {
  readonly color: string;
  readonly dash: readonly number[];
  readonly shape: string;
  readonly width: number;
}

const SOLID: readonly number[] = [1, 0];
const DASHES: readonly (readonly number[])[] = [SOLID, [8, 3], [8, 3, 2, 3], [4, 3]];
/** Without the triangle that points up: that one flags a point. */
const SHAPES = ["circle", "square", "diamond", "triangle-down", "cross", "triangle-right", "triangle-left"];
/** Lift coming down. */
export const DOTTED: readonly number[] = [1.5, 3];

/** A style for each run: the main one in the first colour and unbroken, baselines grey and thin. */
export function runStyles(runs: readonly ChartRun[], theme: ChartTheme): RunStyle[] {
  const hasMain = runs.some(({ role }) => role === "main");
  let next = hasMain ? 1 : 0;
  let mains = 0;
  return runs.map(({ role }, index): RunStyle => {
    if (role === "baseline") return { color: theme.baseline, dash: SOLID, shape: "circle", width: 1.3 };
    const at = role === "main" && mains++ === 0 ? 0 : next++;
    const round = Math.floor(at / theme.series.length);
    return {
      color: theme.series[at % theme.series.length] ?? theme.text,
      dash: DASHES[(at + round) % DASHES.length] ?? SOLID,
      shape: SHAPES[at % SHAPES.length] ?? "circle",
      width: role === "main" || index === 0 ? 2 : 1.7,
    };
  });
}
