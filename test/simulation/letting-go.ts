// How often a trace is said to show that the port lets go: where it does, and where it does not.

import { areaSteps } from "../../shared/calc/trace/area-steps.ts";
import { type Rate, rateOf } from "../kit/binomial.ts";
import { approach, QUICK_BENCH, type Sample } from "../kit/simulator/bench.ts";
import { logged, stepsOf } from "../kit/simulator/logger.ts";
import { type SimulatedPort, STABLE_PORT, unstablePort } from "../kit/simulator/port.ts";
import { normals } from "../kit/simulator/random.ts";
import { BAND, DENSITY, TARGET } from "./settings.ts";

const LIFT = 0.5 * 0.0254;
/** A trace ends after so many seconds. */
const DURATION = 6;
/** Scatter of the depression's transducer, Pa: 0.04 inH2O. */
const DEPRESSION_NOISE = 10;

export const SAMPLES: readonly number[] = [50, 100, 150, 300];
export const CORRELATIONS: readonly number[] = [0, 0.3, 0.6, 0.8, 0.9, 0.95];
export const STEPS: readonly number[] = [0.01, 0.015, 0.02, 0.03, 0.05];
export const TRACE_NOISES: readonly number[] = [0.002, 0.005];

interface TraceCase {
  readonly port: SimulatedPort;
  /** Time constant of the bench, s. */
  readonly time: number;
  readonly samples: number;
  readonly noise: number;
  readonly correlation: number;
  readonly seed: number;
}

export interface LetGoAlarms {
  readonly samples: number;
  /** By the correlations. */
  readonly rates: readonly Rate[];
}

/** A stable port on a bench of a time constant of 0.8 s. */
export function letGoAlarms(traces: number): readonly LetGoAlarms[] {
  return SAMPLES.map((samples, at) => ({
    samples,
    rates: CORRELATIONS.map((correlation, index) =>
      saidToLetGo(
        { port: STABLE_PORT, time: 0.8, samples, noise: 0.003, correlation, seed: 5000 + 10 * at + index },
        traces,
        ["let-go", "re-attached"],
      ),
    ),
  }));
}

export interface LetGoDetection {
  readonly time: number;
  readonly samples: number;
  readonly noise: number;
  /** By the steps. */
  readonly rates: readonly Rate[];
}

/** How quick the bench is, and how many samples its logger takes in six seconds. */
const LOGGED: readonly (readonly [time: number, samples: number])[] = [
  [0.3, 300],
  [0.8, 100],
  [0.8, 300],
  [1.2, 100],
];

/** A port that lets go on its way up. */
export function letGoDetection(traces: number): readonly LetGoDetection[] {
  return LOGGED.flatMap(([time, samples], at) =>
    TRACE_NOISES.map((noise, index) => ({
      time,
      samples,
      noise,
      rates: STEPS.map((step, which) => {
        const seed = 6000 + 100 * at + 10 * index + which;
        const one = { port: unstablePort(step), time, samples, noise, correlation: 0.3, seed };
        return saidToLetGo(one, traces, ["let-go"]);
      }),
    })),
  );
}

/** Traces with a step of one of the kinds; what a record's findings say of a trace is what `areaSteps` gives. */
function saidToLetGo(one: TraceCase, traces: number, kinds: readonly string[]): Rate {
  const normal = normals(one.seed);
  const bench = { ...QUICK_BENCH, controller: { order: 1, time: one.time } } as const;
  const made = approach({
    port: one.port,
    bench,
    lift: LIFT,
    target: TARGET,
    density: DENSITY,
    time: DURATION,
  });
  const noise = { flow: one.noise, correlation: one.correlation, depression: DEPRESSION_NOISE };
  let said = 0;
  for (let trace = 0; trace < traces; trace++) {
    const samples = logged(made, stepsOf(DURATION / one.samples), noise, normal);
    const time = Float64Array.from(samples, (sample) => sample.time);
    const depression = Float64Array.from(samples, (sample) => sample.depression);
    const flow = Float64Array.from(samples, (sample) => correctedFlow(sample, bench.leak));
    const steps = areaSteps({ time, depression }, flow, TARGET, BAND);
    if (steps.some(({ kind }) => kinds.includes(kind))) said++;
  }
  return rateOf(said, traces);
}

function correctedFlow({ depression, flow }: Sample, leak: number): number {
  return depression > 0 ? flow * Math.sqrt(TARGET / depression) - leak : Number.NaN;
}
