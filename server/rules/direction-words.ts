// What is said of a lift with two flows, wherever it is said: among the findings, and at each of its readings.
import type { TwoWay } from "../../shared/calc/hysteresis.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { figures, liftWords, percent } from "./words.ts";

export type DirectionArgs = Readonly<Record<"lift" | "difference" | "flows" | "chance", string>>;

export function directionMessage({ lift, difference, flows, chance }: DirectionArgs): string {
  return `at ${lift} the flow is ${difference} on the way down (${flows}; chance alone gives ${chance})`;
}

export function directionArgs({ setup }: RunResult, two: TwoWay): DirectionArgs {
  const { rising, falling, difference, chance } = two;
  const { flow } = displayUnits(setup);
  const [up, down] = [rising, falling].map((branch) => figures(fromSI(branch.flow, flow)));
  const [row] = falling.rows;
  return {
    lift: row === undefined ? "" : liftWords(setup.run, row),
    difference: `${percent(Math.abs(difference))} ${difference < 0 ? "lower" : "higher"}`,
    flows: `${up} \u2192 ${down} ${flow.symbol}`,
    chance: percent(chance),
  };
}
