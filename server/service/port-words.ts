// What the port does at one reading, in the words of the findings: they mark one row, and speak of several.
import { flatTop } from "../../shared/calc/flat-top.ts";
import { twoWaySweep } from "../../shared/calc/hysteresis.ts";
import type { FallBack, RowResult, RunResult } from "../../shared/model/result.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { directionArgs, directionMessage } from "../rules/direction-words.ts";
import {
  fallBackArgs,
  fallBackMessage,
  unresolvedArgs,
  unresolvedMessage,
} from "../rules/fall-back-words.ts";
import { traceAnswer } from "../rules/flat-top-answer.ts";
import { flatTopArgs, flatTopMessage } from "../rules/flat-top-words.ts";
import { percent } from "../rules/words.ts";

/** `traces` are those of the run. One sentence for each fall-back, flat top and difference of directions that the reading is part of. */
export function portWords(
  result: RunResult,
  row: RowResult,
  traces: () => readonly ComputedTrace[],
): readonly string[] {
  return [
    ...result.fallBacks.flatMap((fall) => fallBackWords(result, fall, row)),
    ...flatTopWords(result, row, traces),
    ...directionWords(result, row),
  ];
}

function fallBackWords(result: RunResult, fall: FallBack, row: RowResult): readonly string[] {
  const { onset, last, recovery } = fall;
  const station = result.rising.find(has(row));
  const end = recovery ?? last;
  if (station === undefined || station.lift < onset.lift || station.lift > end.lift) return [];
  const message = fall.resolved
    ? fallBackMessage(fallBackArgs(result, fall))
    : unresolvedMessage(unresolvedArgs(result, fall));
  const place =
    station === onset
      ? "this is the onset"
      : station === recovery
        ? "here it is back"
        : `here it is ${percent(1 - station.flow / onset.flow)} below the onset`;
  return [`${message}. ${place[0]?.toUpperCase()}${place.slice(1)}.`];
}

function flatTopWords(
  result: RunResult,
  row: RowResult,
  traces: () => readonly ComputedTrace[],
): readonly string[] {
  const flat = flatTop(result);
  if (!flat?.stations.some(has(row))) return [];
  return [`${flatTopMessage(flatTopArgs(result, flat, traceAnswer(flat, traces())))}.`];
}

function directionWords(result: RunResult, row: RowResult): readonly string[] {
  const sweep = twoWaySweep(result);
  if (sweep === undefined) return [];
  return sweep.differing
    .filter(({ rising, falling }) => [rising, falling].some(has(row)))
    .map((two) => `${directionMessage(directionArgs(result, sweep, two))}.`);
}

function has(row: RowResult): (station: { readonly rows: readonly RowResult[] }) => boolean {
  return ({ rows }) => rows.includes(row);
}
