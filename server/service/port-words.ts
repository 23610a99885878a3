// What the port does at one reading, in the words of the findings: they mark one row, and speak of several.
import { flatTop } from "../../shared/calc/flat-top.ts";
import { twoWaySweep } from "../../shared/calc/hysteresis.ts";
import type { FallBack, RowResult, RunResult } from "../../shared/model/result.ts";
import { directionArgs, directionMessage } from "../rules/direction-words.ts";
import {
  fallBackArgs,
  fallBackMessage,
  unresolvedArgs,
  unresolvedMessage,
} from "../rules/fall-back-words.ts";
import { flatTopArgs, flatTopMessage } from "../rules/flat-top-words.ts";
import { percent } from "../rules/words.ts";

/** One sentence for each fall-back, flat top and difference of directions that the reading is part of. */
export function portWords(result: RunResult, row: RowResult): readonly string[] {
  return [
    ...result.fallBacks.flatMap((fall) => fallBackWords(result, fall, row)),
    ...flatTopWords(result, row),
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

function flatTopWords(result: RunResult, row: RowResult): readonly string[] {
  const flat = flatTop(result);
  return flat?.stations.some(has(row)) ? [`${flatTopMessage(flatTopArgs(result, flat))}.`] : [];
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
