// What is said of a fall-back, wherever it is said: among the findings, and at each of its readings.
import type { FallBack, RunResult, Station } from "../../shared/model/result.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { liftText, stationLift } from "../../shared/render/station-words.ts";
import { rowSpan } from "./places.ts";
import { figures, liftWords, percent } from "./words.ts";

/** What a fall-back that is resolved is told with. */
export type FallBackArgs = Readonly<
  Record<"depth" | "lift" | "flows" | "chance" | "clearest" | "recovery" | "repeat", string>
>;

export function fallBackMessage({ depth, lift, flows, chance, clearest, recovery }: FallBackArgs): string {
  const why = clearest === "" ? `chance alone gives ${chance} here` : clearest;
  return `flow falls back ${depth} after ${lift} (${flows}; ${why})${recovery}`;
}

export function fallBackArgs(result: RunResult, fall: FallBack): FallBackArgs {
  const { run } = result.setup;
  const { flow } = displayUnits(result.setup);
  const { onset, deepest, clearest, recovery } = fall;
  const [from, to] = [onset, deepest].map((station) => figures(fromSI(station.flow, flow)));
  const isDeepestClear = fall.depth > fall.chance;
  return {
    depth: percent(fall.depth),
    lift: stationLift(result, onset),
    flows: `${from} \u2192 ${to} ${flow.symbol}`,
    chance: percent(fall.chance),
    // The deepest station may have been read less often than another.
    clearest: isDeepestClear
      ? ""
      : `chance alone gives ${percent(clearest.chance)} at ${stationLift(result, clearest.station)}, where it is ${percent(clearest.drop)}`,
    recovery:
      recovery?.rows[0] === undefined
        ? "; it does not recover"
        : `; it recovers at ${liftWords(run, recovery.rows[0])}`,
    repeat: liftsToRepeat(result, onset),
  };
}

/** What a drop that is not resolved is told with. */
export type UnresolvedArgs = Readonly<Record<"depth" | "lift" | "chance" | "lifts", string>> & {
  readonly readings: number;
};

export function unresolvedMessage({ depth, lift, chance }: UnresolvedArgs): string {
  return `flow drops ${depth} after ${lift}, which is not resolved: chance alone gives ${chance} here`;
}

export function unresolvedArgs(result: RunResult, fall: FallBack): UnresolvedArgs {
  const { onset, deepest, depth, chance, readingsNeeded } = fall;
  return {
    depth: percent(depth),
    lift: stationLift(result, onset),
    chance: percent(chance),
    readings: readingsNeeded,
    lifts: `${stationLift(result, onset)} and ${stationLift(result, deepest)}`,
  };
}

/** A fall-back is marked at its deepest row, from its onset to where it recovers, or else ends. */
export function fallBackPlace({ onset, deepest, last, recovery }: FallBack) {
  const first = onset.rows[0];
  const lowest = deepest.rows[0];
  const end = (recovery ?? last).rows[0];
  if (first === undefined || lowest === undefined || end === undefined) return undefined;
  const related = [
    { span: rowSpan(first.row), message: "the onset" },
    ...(end === lowest
      ? []
      : [{ span: rowSpan(end.row), message: recovery === undefined ? "up to here" : "recovered here" }]),
  ];
  return { span: rowSpan(lowest.row), related };
}

/** Halfway behind the onset, and the station behind it. */
function liftsToRepeat({ rising, setup }: RunResult, onset: Station): string {
  const next = rising[rising.indexOf(onset) + 1];
  const { lift } = displayUnits(setup);
  const lifts = next === undefined ? [] : [(onset.lift + next.lift) / 2, next.lift];
  return `${lifts.map((value) => liftText(value, lift)).join(" and ")} ${lift.symbol}`;
}
