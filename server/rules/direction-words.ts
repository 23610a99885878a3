// What is said of lifts with two flows, wherever it is said: in the finding, and at each of the readings.
import type { TwoWay, TwoWaySweep } from "../../shared/calc/hysteresis.ts";
import type { Related } from "../../shared/finding.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { rowSpan } from "./places.ts";
import { figures, liftWords, percent } from "./words.ts";

export type DirectionArgs = Readonly<Record<"lift" | "difference" | "flows" | "chance" | "sweep", string>>;

export function directionMessage({ lift, difference, flows, chance, sweep }: DirectionArgs): string {
  return `at ${lift} the flow is ${difference} on the way down (${flows}; chance alone gives ${chance}); ${sweep}`;
}

/** The words for one of the sweep's differing lifts. */
export function directionArgs({ setup }: RunResult, sweep: TwoWaySweep, two: TwoWay): DirectionArgs {
  const { rising, falling, chance } = two;
  const { flow } = displayUnits(setup);
  const [up, down] = [rising, falling].map((branch) => figures(fromSI(branch.flow, flow)));
  const [row] = falling.rows;
  return {
    lift: row === undefined ? "" : liftWords(setup.run, row),
    difference: differenceWords(two),
    flows: `${up} \u2192 ${down} ${flow.symbol}`,
    chance: percent(chance),
    sweep: sweepWords(sweep),
  };
}

function differenceWords({ difference }: TwoWay): string {
  return `${percent(Math.abs(difference))} ${difference < 0 ? "lower" : "higher"}`;
}

/** How many lifts differ, and how often so many do by chance. */
function sweepWords({ differing, lifts, chanceOfOne, chanceOfAll }: TwoWaySweep): string {
  const marked = differing.length;
  if (lifts === 1)
    return `no other lift was read both ways, and chance alone marks it in ${often(chanceOfOne)} of stable sweeps`;
  const all = marked === 1 ? "" : `, and ${marked} or more in ${often(chanceOfAll)}`;
  return `${marked} of ${lifts} lifts ${marked === 1 ? "differs" : "differ"}: chance alone marks one or more in ${often(chanceOfOne)} of stable sweeps${all}`;
}

function often(chance: number): string {
  return chance < 5e-5 ? "less than 0.01 %" : percent(chance);
}

/** The clearest lift is marked on the way down; its reading on the way up and the other differing lifts are its other places. */
export function directionPlace(result: RunResult, { differing, clearest }: TwoWaySweep) {
  const down = clearest.falling.rows.at(-1);
  const up = clearest.rising.rows[0];
  if (down === undefined || up === undefined) return undefined;
  const others = differing.flatMap((two): readonly Related[] => {
    const row = two.falling.rows.at(-1);
    if (two === clearest || row === undefined) return [];
    const message = `${liftWords(result.setup.run, row)} too: ${differenceWords(two)} on the way down`;
    return [{ span: rowSpan(row.row), message, isMarked: true }];
  });
  return {
    span: rowSpan(down.row),
    related: [{ span: rowSpan(up.row), message: "on the way up" }, ...others],
  };
}
