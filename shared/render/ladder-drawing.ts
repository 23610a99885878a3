// A ladder on its axes: its steps, and the laws that run through them.
import { extent } from "../calc/extent.ts";
import type { LadderResult, PowerLaw } from "../model/ladder-result.ts";
import { fromSI } from "../quantity/unit.ts";
import type { Json } from "./chart-layers.ts";
import { markOf } from "./chart-mark.ts";
import type { ChartScale } from "./chart-scale.ts";
import type { ChartTheme } from "./chart-theme.ts";
import { signedPercent } from "./ladder-table.ts";
import type { LadderUnits } from "./ladder-units.ts";
import { ratioScale } from "./ratio-scale.ts";
import { shownNumber } from "./shown-number.ts";

/** Between two numbers of the depression axis, about. */
const TICK = 70;
/** Pieces of a law's line. */
const PIECES = 80;

/** A place on the axis of depressions: logarithms to base ten there, and how far it is off the square root law. */
export interface Place {
  readonly x: number;
  readonly y: number;
  /** Of the flow over that of the square root law through the middle of the steps, natural logarithm. */
  readonly off: number;
}

export interface Step extends Place {
  /** Two standard uncertainties of the flow, relative. */
  readonly reach: number;
  /** Its words, and what leads from it to its line. */
  readonly told: Json;
}

export interface LadderDrawing {
  readonly result: LadderResult;
  readonly units: LadderUnits;
  readonly theme: ChartTheme;
  readonly x: ChartScale;
  readonly width: number;
  readonly left: number;
  readonly steps: readonly Step[];
  /** The fitted law, of one power or of two. */
  readonly fitted: readonly Place[];
  /** That of an ideal nozzle; empty where it is not known. */
  readonly nozzle: readonly Place[];
  /** The square root law itself. */
  readonly root: readonly Place[];
}

/** `block` is what the steps' lines are counted in. */
export function ladderDrawing(
  result: LadderResult,
  law: PowerLaw,
  units: LadderUnits,
  theme: ChartTheme,
  { width, left, block }: { readonly width: number; readonly left: number; readonly block: string },
): LadderDrawing {
  const { points, kink, nozzle } = result;
  const inDepression = (value: number) => Math.log10(fromSI(value, units.depression));
  const inFlow = (log: number) => (log - Math.log(units.flow.factor)) / Math.LN10;
  const logOf = (depression: number) => Math.log(depression / law.middle);
  const steps = points.map(({ row, depression, flow, uncertainty }, at): Step => {
    const log = logOf(depression);
    const about = `step ${at + 1}: ${shownNumber(fromSI(flow, units.flow), 2 * uncertainty)} ${units.flow.symbol} at ${trimmed(fromSI(depression, units.depression))} ${units.depression.symbol}, ${signedPercent(Math.log(flow) - law.level - 0.5 * log)} % off the square root law`;
    return {
      x: inDepression(depression),
      y: inFlow(Math.log(flow)),
      off: Math.log(flow) - law.level - 0.5 * log,
      reach: 2 * uncertainty,
      told: { about, ...markOf(block, row.line) },
    };
  });
  const logs = points.map(({ depression }) => logOf(depression));
  const [low, high] = extent(logs);
  const across = (deviation: (log: number) => number): readonly Place[] =>
    Array.from({ length: PIECES + 1 }, (_, at) => {
      const log = low + ((high - low) * at) / PIECES;
      const off = deviation(log);
      const x = inDepression(law.middle * Math.exp(log));
      return { x, off, y: inFlow(law.level + 0.5 * log + off) };
    });
  const fit = (log: number): number => {
    if (kink === undefined) return (law.exponent - 0.5) * log;
    const at = logOf(kink.depression);
    const power = log < at ? kink.below : kink.above;
    return kink.level - law.level + power * (log - at) - 0.5 * log;
  };
  const xs = steps.map(({ x }) => x);
  return {
    ...{ result, units, theme, width, left, steps },
    x: ratioScale(...extent(xs), width / TICK),
    fitted: across(fit),
    nozzle: nozzle === undefined ? [] : across((log) => (nozzle - 0.5) * log),
    root: across(() => 0),
  };
}

/** How a step looks on either panel. */
export function stepLook({ theme }: LadderDrawing): Json {
  const [color] = theme.series;
  return { shape: "circle", size: 34, color, fill: color, width: 1 };
}

function trimmed(value: number): string {
  return String(Number(value.toPrecision(3)));
}
