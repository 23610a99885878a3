// An operator at a simulated bench: opens lift after lift, waits or does not, and writes down what the display shows.
import { approach, type Sample, type SimulatedBench, STEP, settleTime } from "./bench.ts";
import type { SimulatedPort } from "./port.ts";
import type { Normal } from "./random.ts";

/** `waits` reads so many seconds after the band is held; `at once` when the depression first comes within so many Pa. */
export type Operator =
  | { readonly kind: "waits"; readonly after: number }
  | { readonly kind: "at once"; readonly within: number };

export interface SweepInput {
  readonly port: SimulatedPort;
  readonly bench: SimulatedBench;
  readonly operator: Operator;
  readonly normal: Normal;
  /** m, in the order in which they are taken. */
  readonly lifts: readonly number[];
  /** Readings at each lift, one after another, each from shut. */
  readonly repeats: number;
  readonly target: number;
  readonly band: number;
  readonly density: number;
  /** Standard deviation of one flow reading, relative, and of the lift that is set, m. */
  readonly noise: number;
  readonly liftNoise: number;
  /** Scatter of the rate at which the port lets go, relative: no two openings are alike. */
  readonly edgeNoise: number;
  /** The blower runs on while the lift is set: the flow stays in its state, and the depression where it is. */
  readonly isBlowing?: boolean;
}

export interface SimulatedReading {
  readonly lift: number;
  readonly depression: number;
  readonly flow: number;
  readonly settle: number;
  readonly read: number;
  readonly isAttached: boolean;
}

/** More time than any approach of these benches takes, as a multiple of its slowest time constant. */
const PATIENCE = 6.5;

/** The readings of one sweep in the order in which they were taken. */
export function sweep(input: SweepInput): readonly SimulatedReading[] {
  let isAttached = true;
  return input.lifts.flatMap((lift) =>
    Array.from({ length: input.repeats }, () => {
      const taken = reading(lift, input, isAttached);
      if (input.isBlowing === true) isAttached = taken.isAttached;
      return taken;
    }),
  );
}

function reading(lift: number, input: SweepInput, isAttached: boolean): SimulatedReading {
  const { bench, operator, normal, target, band, density, noise } = input;
  const set = Math.max(0, lift + input.liftNoise * normal());
  const port = withEdgeNoise(input.port, input.edgeNoise * normal());
  const wait = operator.kind === "waits" ? operator.after : 0;
  const time = bench.deadTime + PATIENCE * slowestTime(bench) + wait + 0.5;
  const samples = approach({
    port,
    bench,
    lift: set,
    target,
    density,
    time,
    isAttached,
    from: input.isBlowing === true ? target : 0,
  });
  const settle = settleTime(samples, target, band);
  const at =
    operator.kind === "waits"
      ? Math.round((settle + wait) / STEP)
      : samples.findIndex(({ depression }) => depression >= target - operator.within);
  const taken: Sample | undefined = samples[Math.min(Math.max(0, at), samples.length - 1)];
  if (taken === undefined) throw new RangeError("an approach has samples");
  return {
    lift,
    depression: taken.depression,
    flow: taken.flow * (1 + noise * normal()),
    settle,
    read: taken.time,
    isAttached: taken.isAttached,
  };
}

function withEdgeNoise(port: SimulatedPort, by: number): SimulatedPort {
  const { edge } = port;
  return edge === undefined ? port : { ...port, edge: { ...edge, rate: edge.rate * Math.exp(by) } };
}

function slowestTime({ controller, rateLimit }: SimulatedBench): number {
  const time =
    controller.order === 1 ? controller.time : 1 / (controller.frequency * Math.min(1, controller.damping));
  return rateLimit === undefined ? time : time + 1000 / rateLimit;
}
