// What is said of a flat top, wherever it is said: among the findings, and at each of its readings.
import type { FlatTop } from "../../shared/calc/flat-top.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { stationLift } from "../../shared/render/station-words.ts";
import { answerRemedy, answerWords, type TraceAnswer } from "./flat-top-answer.ts";
import { rowSpan } from "./places.ts";
import { figures, inUnit, percent, signed } from "./words.ts";

export type FlatTopArgs = Readonly<
  Record<
    "from" | "to" | "flows" | "rise" | "chance" | "lift" | "settle" | "quick" | "answer" | "remedy",
    string
  >
>;

export function flatTopMessage(args: FlatTopArgs): string {
  const { from, to, flows, rise, chance, lift, settle, quick, answer } = args;
  return `flow is flat from ${from} to ${to} (${flows}, ${rise}; chance alone gives ${chance}) on a slow approach: ${settle} at ${lift}, ${quick}${answer}`;
}

/** `answer` is that of the run's traces. */
export function flatTopArgs(result: RunResult, flat: FlatTop, answer: TraceAnswer | undefined): FlatTopArgs {
  const { stations, rise, chance, slowest, settle, quick } = flat;
  const units = displayUnits(result.setup);
  const [first, last] = [stations[0], stations.at(-1)];
  const lift = (station = slowest) => stationLift(result, station);
  const flow = (station = slowest) => figures(fromSI(station.flow, units.flow));
  const limit = inUnit(quick.time, units.time);
  return {
    from: lift(first),
    to: lift(last),
    flows: `${flow(first)} \u2192 ${flow(last)} ${units.flow.symbol}`,
    rise: signed(rise),
    chance: percent(chance),
    lift: lift(),
    settle: inUnit(settle, units.time),
    quick: quick.from === "quick" ? `quick is ${limit}` : `1.5 times the usual settle is ${limit}`,
    answer: answerWords(answer),
    remedy: answerRemedy(answer, lift()),
  };
}

/** A flat top is marked where the approach took longest, from its first station to its last. */
export function flatTopPlace({ stations, slowest }: FlatTop) {
  const row = slowest.rows[0];
  const first = stations[0]?.rows[0];
  const last = stations.at(-1)?.rows[0];
  if (row === undefined || first === undefined || last === undefined) return undefined;
  const related = [
    { span: rowSpan(first.row), message: "flat from here" },
    ...(last === row ? [] : [{ span: rowSpan(last.row), message: "up to here" }]),
  ];
  return { span: rowSpan(row.row), related };
}
