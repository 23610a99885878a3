// How often a fall-back that is there is found, by its size, the bench's noise, the readings and the bench's speed.
import { type Rate, rateOf } from "../kit/binomial.ts";
import { QUICK_BENCH, type SimulatedBench } from "../kit/simulator/bench.ts";
import { type JudgedRun, judgeRecord } from "../kit/simulator/judged.ts";
import { type SimulatedPort, STABLE_PORT, unstablePort } from "../kit/simulator/port.ts";
import { normals } from "../kit/simulator/random.ts";
import { benchBlock, PORT_BLOCK, runBlock, sessionBlock } from "../kit/simulator/record.ts";
import { type Operator, sweep } from "../kit/simulator/sweep.ts";
import { BAND, DENSITY, LIFTS, RUNS_A_RECORD, TARGET } from "./settings.ts";

export const DROPS: readonly number[] = [0.01, 0.015, 0.02, 0.03, 0.04];
export const NOISES: readonly number[] = [0.002, 0.0035, 0.005, 0.01];
export const REPEATS: readonly number[] = [1, 2, 4];
/** Time constants of the bench's controller, s. */
export const TIMES: readonly number[] = [0.2, 0.4, 0.8, 1.2, 1.6, 2.4, 3.2];
/** The bench's `quick`, s: an approach of 4.94 time constants that the port's edge still feels (handbook section 12). */
export const QUICK = 2.5;

export interface Case {
  readonly port: SimulatedPort;
  readonly bench: SimulatedBench;
  readonly noise: number;
  readonly repeats: number;
  readonly operator: Operator;
  readonly seed: number;
  /** `LIFTS` unless stated. */
  readonly lifts?: readonly number[];
  readonly isBlowing?: boolean;
  readonly liftNoise?: number;
}

/** Standard deviation of a set lift, m: four tenths of a thousandth of an inch. */
const LIFT_NOISE = 0.00001;
const WAITS: Operator = { kind: "waits", after: 0.5 };

/** The judged sweeps of one case. */
export function judgedSweeps(one: Case, sweeps: number): readonly JudgedRun[] {
  const { port, bench, noise, repeats, operator } = one;
  const normal = normals(one.seed);
  const head = `headnote 1\n${benchBlock("simulated", { repeat: noise || 0.0035, quick: QUICK, within: BAND })}${PORT_BLOCK}${sessionBlock({ target: TARGET, leak: bench.leak, hasPort: true })}`;
  const judged: JudgedRun[] = [];
  for (let done = 0; done < sweeps; done += RUNS_A_RECORD) {
    const runs = Array.from({ length: Math.min(RUNS_A_RECORD, sweeps - done) }, (_, index) => {
      const readings = sweep({
        port,
        bench,
        operator,
        normal,
        lifts: one.lifts ?? LIFTS,
        isBlowing: one.isBlowing ?? false,
        repeats,
        target: TARGET,
        band: BAND,
        density: DENSITY,
        noise,
        liftNoise: one.liftNoise ?? LIFT_NOISE,
        edgeNoise: 0.15,
      });
      return runBlock(`r${index}`, "simulated", readings);
    });
    judged.push(...judgeRecord(head + runs.join("")));
  }
  return judged;
}

/** How many of the sweeps have a finding of a code. */
export function rateWith(judged: readonly JudgedRun[], code: string): Rate {
  return rateOf(judged.filter(({ codes }) => codes.has(code)).length, judged.length);
}

export interface Detection {
  readonly noise: number;
  readonly repeats: number;
  /** Of sweeps in which the fall-back was resolved, by the drops. */
  readonly rates: readonly Rate[];
}

/** A quick bench, on which the port always lets go. */
export function detection(sweeps: number): readonly Detection[] {
  return NOISES.flatMap((noise, at) =>
    REPEATS.map((repeats, index) => ({
      noise,
      repeats,
      rates: DROPS.map((drop, which) => {
        const seed = 1000 + 100 * at + 10 * index + which;
        const port = unstablePort(drop);
        return rateWith(
          judgedSweeps({ port, bench: QUICK_BENCH, noise, repeats, operator: WAITS, seed }, sweeps),
          "fall-back",
        );
      }),
    })),
  );
}

export interface BySpeed {
  readonly time: number;
  /** Median time to settle, s. */
  readonly settle: number;
  readonly fallBack: Rate;
  readonly flatTop: Rate;
  readonly neither: Rate;
  readonly stableFallBack: Rate;
  readonly stableFlatTop: Rate;
}

/** One unstable port (3 % where it lets go) and a stable one on benches of different speed, each lift read once. */
export function bySpeed(sweeps: number): readonly BySpeed[] {
  return TIMES.map((time, index) => {
    const bench: SimulatedBench = { ...QUICK_BENCH, controller: { order: 1, time } };
    const common = { bench, noise: 0.0035, repeats: 1, operator: WAITS } as const;
    const judged = judgedSweeps({ ...common, port: unstablePort(0.03), seed: 2000 + index }, sweeps);
    const stable = judgedSweeps({ ...common, port: STABLE_PORT, seed: 2100 + index }, sweeps);
    return {
      time,
      settle: bench.deadTime + time * Math.log(TARGET / BAND),
      fallBack: rateWith(judged, "fall-back"),
      flatTop: rateWith(judged, "flat-top"),
      neither: rateOf(
        judged.filter(({ codes }) => !codes.has("fall-back") && !codes.has("flat-top")).length,
        judged.length,
      ),
      stableFallBack: rateWith(stable, "fall-back"),
      stableFlatTop: rateWith(stable, "flat-top"),
    };
  });
}
