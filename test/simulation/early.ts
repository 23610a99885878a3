// What is said of readings that were taken early, held against the trace of their lift: whether they can be used or not.
import { type Rate, rateOf } from "../kit/binomial.ts";
import { approach, QUICK_BENCH, settleTime } from "../kit/simulator/bench.ts";
import { judgeRecord } from "../kit/simulator/judged.ts";
import { logged, stepsOf } from "../kit/simulator/logger.ts";
import {
  portFlow,
  type SimulatedPort,
  STABLE_PORT,
  throatArea,
  unstablePort,
} from "../kit/simulator/port.ts";
import { type Normal, normals } from "../kit/simulator/random.ts";
import { benchBlock, PORT_BLOCK, runBlock, sessionBlock, traceBlock } from "../kit/simulator/record.ts";
import { BAND, DENSITY, RUNS_A_RECORD, TARGET } from "./settings.ts";

const LIFT = 0.5 * 0.0254;
const DURATION = 8;
const SAMPLES = 100;
const DEPRESSION_NOISE = 10;

/** When the reading is taken: long after the bench has settled, or when its depression passes a share of the target. */
export const MOMENTS = ["2 s after it has settled", "at 27.5 inH2O", "at 25 inH2O"] as const;
const SHARES = [undefined, 27.5 / 28, 25 / 28] as const;

/** Lets go where the depression is nearly there, at any rate. */
const LATE = unstablePort(0.03, { rate: 0, speed: 0.997 * targetSpeed(unstablePort(0)) });

function targetSpeed(port: SimulatedPort): number {
  return portFlow(port, LIFT, TARGET, DENSITY, true) / throatArea(port);
}

interface EarlyCase {
  readonly port: SimulatedPort;
  /** Time constants of bench and display, s. */
  readonly time: number;
  readonly lag: number;
  readonly noise: number;
  readonly share: number | undefined;
  readonly seed: number;
}

export interface EarlyReadings {
  readonly what: string;
  readonly moment: string;
  /** Said to be early at all, and among all readings said to be beyond mending. */
  readonly early: Rate;
  readonly useless: Rate;
}

/** A bench with a time constant of 0.8 s, logged a hundred times in eight seconds, each sample of flow with 0.35 % of noise. */
export function earlyReadings(readings: number): readonly EarlyReadings[] {
  const cases: readonly (readonly [what: string, port: SimulatedPort, lag: number])[] = [
    ["nothing: the flow belongs to its depression", STABLE_PORT, 0.001],
    ["the display lags by 0.2 s", STABLE_PORT, 0.2],
    ["the port lets go by 3 % later", LATE, 0.001],
  ];
  return cases.flatMap(([what, port, lag], at) =>
    MOMENTS.map((moment, which) => {
      const one = { port, time: 0.8, lag, noise: 0.0035, share: SHARES[which], seed: 8000 + 10 * at + which };
      return { what, moment, ...count(one, readings) };
    }),
  );
}

function count(one: EarlyCase, readings: number): { readonly early: Rate; readonly useless: Rate } {
  const normal = normals(one.seed);
  const bench = benchBlock("simulated", { repeat: 0.0035, within: BAND });
  const head = `headnote 1\n${bench}${PORT_BLOCK}${sessionBlock({ target: TARGET, leak: QUICK_BENCH.leak, hasPort: true })}`;
  let early = 0;
  let useless = 0;
  for (let done = 0; done < readings; done += RUNS_A_RECORD) {
    const count = Math.min(RUNS_A_RECORD, readings - done);
    const runs = Array.from({ length: count }, (_, run) => readRun(`r${run}`, one, normal));
    for (const { messages } of judgeRecord(head + runs.join(""))) {
      const said = messages.get("read-early");
      if (said === undefined) continue;
      early++;
      if (said.includes("no correction mends")) useless++;
    }
  }
  return { early: rateOf(early, readings), useless: rateOf(useless, readings) };
}

/** A run of one reading and a trace of the same approach. */
function readRun(id: string, { port, time, lag, noise, share }: EarlyCase, normal: Normal): string {
  const bench = { ...QUICK_BENCH, controller: { order: 1, time }, meterLag: lag } as const;
  const made = approach({ port, bench, lift: LIFT, target: TARGET, density: DENSITY, time: DURATION });
  const settle = settleTime(made, TARGET, BAND);
  const at =
    share === undefined
      ? stepsOf(settle + 2)
      : made.findIndex(({ depression }) => depression >= share * TARGET);
  const read = made[at];
  if (read === undefined) throw new RangeError("an approach comes up");
  const noises = { flow: noise, correlation: 0.3, depression: DEPRESSION_NOISE };
  const trace = logged(made, stepsOf(DURATION / SAMPLES), noises, normal);
  const reading = { ...read, lift: LIFT, flow: read.flow * (1 + noise * normal()), settle, read: read.time };
  return runBlock(id, "simulated", [reading]) + traceBlock(LIFT, id, trace);
}
