// Tells the runs of a chart apart: by colour, and without colour by dash and symbol.
import type { RunResult } from "../model/result.ts";
import type { ChartRun } from "./chart-run.ts";
import type { ChartTheme } from "./chart-theme.ts";

export interface RunStyle {
  readonly color: string;
  readonly dash: readonly number[];
  readonly shape: string;
  readonly width: number;
  /** Drawn grey, as what the others stand before. */
  readonly isContext: boolean;
}

const SOLID: readonly number[] = [1, 0];
const DASHES: readonly (readonly number[])[] = [SOLID, [8, 3], [8, 3, 2, 3], [4, 3]];
/** Without the triangle that points up: that one flags a point. */
const SHAPES = ["circle", "square", "diamond", "triangle-down", "cross", "triangle-right", "triangle-left"];
/** Lift coming down. */
export const DOTTED: readonly number[] = [1.5, 3];

/**
 * A style for each run: the main one in the first colour and unbroken, baselines grey and thin. Where there are
 * highlighted ones, these take the colours and all others stay grey.
 */
export function runStyles(
  runs: readonly ChartRun[],
  theme: ChartTheme,
  highlighted: readonly RunResult[] = [],
): RunStyle[] {
  const hasMain = runs.some(({ role }) => role === "main");
  let next = hasMain ? 1 : 0;
  let mains = 0;
  return runs.map(({ role, result }, index): RunStyle => {
    const grey = { color: theme.baseline, isContext: true };
    if (role === "baseline") return { ...grey, dash: SOLID, shape: "circle", width: 1.3 };
    const place = highlighted.indexOf(result);
    const at = role === "main" && mains++ === 0 ? 0 : next++;
    const round = Math.floor(at / theme.series.length);
    const dash = DASHES[(at + round) % DASHES.length] ?? SOLID;
    const shape = SHAPES[at % SHAPES.length] ?? "circle";
    if (highlighted.length > 0 && place < 0) return { ...grey, dash, shape, width: 1.1 };
    const colour = place < 0 ? at : place;
    return {
      color: theme.series[colour % theme.series.length] ?? theme.text,
      dash: place < 0 ? dash : (DASHES[place] ?? SOLID),
      shape,
      width: role === "main" || index === 0 || place >= 0 ? 2 : 1.7,
      isContext: false,
    };
  });
}
