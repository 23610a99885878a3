// How often the limits of single differences speak where nothing is: each is made for 5 % of the things it looks at.
import { type Rate, rateOf } from "../kit/binomial.ts";
import { judgeRecord } from "../kit/simulator/judged.ts";
import { normals } from "../kit/simulator/random.ts";
import { benchBlock, runBlock, sessionBlock } from "../kit/simulator/record.ts";
import { BAND, flatReading, RUNS_A_RECORD, TARGET } from "./settings.ts";

const NOISE = 0.004;
const FLOW = 0.1;

export interface OtherAlarm {
  readonly code: string;
  readonly what: string;
  readonly rate: Rate;
}

/** Stations in the order in which they are read. */
const CASES: readonly (readonly [code: string, what: string, stations: readonly number[]])[] = [
  ["repeats-disagree", "three readings of one lift", [0, 0, 0]],
  ["drift", "back at the first lift", [0, 1, 0]],
  ["direction-dependent", "one lift on both ways", [0, 1, 0, -1]],
  [
    "direction-dependent",
    "ten lifts on both ways",
    [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0, -1],
  ],
];

export function otherAlarms(sweeps: number): readonly OtherAlarm[] {
  return CASES.map(([code, what, stations], index) => {
    const normal = normals(400 + index);
    let alarms = 0;
    for (let done = 0; done < sweeps; done += RUNS_A_RECORD) {
      const runs = Array.from({ length: Math.min(RUNS_A_RECORD, sweeps - done) }, (_, run) =>
        runBlock(
          `r${run}`,
          "known",
          stations.map((station) => flatReading(station, FLOW * (1 + NOISE * normal()))),
        ),
      );
      const session = sessionBlock({ target: TARGET, leak: 0, hasPort: false });
      const bench = benchBlock("known", { repeat: NOISE, within: BAND });
      const judged = judgeRecord(`headnote 1\n${bench}${session}${runs.join("")}`);
      alarms += judged.filter(({ codes }) => codes.has(code)).length;
    }
    return { code, what, rate: rateOf(alarms, sweeps) };
  });
}
