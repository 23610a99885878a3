// Makes traces as a bench of known behaviour would give them, for tests of what is found in them.
import { firstOrder, secondOrder } from "../../shared/calc/trace/step-response.ts";
import type { TraceSamples } from "../../shared/model/trace-result.ts";

/** 28 inH2O, and the band of 0.2 inH2O, Pa (the conventional inch of water, 249.08891 Pa). */
export const TARGET = 28 * 249.08891;
export const WITHIN = 0.2 * 249.08891;

export interface MadeTrace {
  readonly count: number;
  /** s between samples. */
  readonly step: number;
  readonly deadTime?: number;
  /** Of a first-order approach, s. */
  readonly timeConstant?: number;
  /** Of a second-order approach. */
  readonly naturalFrequency?: number;
  readonly damping?: number;
  /** Standard deviation of the depression, Pa, and relative one of the flow. */
  readonly noise?: number;
  readonly flowNoise?: number;
  /** How much of the flow's noise goes over from one sample to the next. */
  readonly correlation?: number;
  /** Share of the area that is lost at a time, s. */
  readonly drop?: number;
  readonly at?: number;
  /** Time constant of the flow meter, s. */
  readonly meterLag?: number;
}

export interface MadeSamples {
  readonly samples: TraceSamples;
  /** Corrected flow, m3/s. */
  readonly flow: Float64Array;
}

/** `normal` gives standard normal numbers; air thins out by 3 % of the flow up to the target. */
export function makeTrace(made: MadeTrace, normal: () => number): MadeSamples {
  const { count, step, deadTime = 0, noise = 0, flowNoise = 0, correlation = 0 } = made;
  const time = new Float64Array(count);
  const depression = new Float64Array(count);
  const flow = new Float64Array(count);
  const fresh = Math.sqrt(1 - correlation ** 2);
  let kept = normal();
  let shown = 0;
  for (let at = 0; at < count; at++) {
    const t = at * step;
    const share = response(made, t - deadTime);
    const pressure = TARGET * share;
    const lost = made.at !== undefined && t >= made.at ? (made.drop ?? 0) : 0;
    const passed = 0.1 * Math.sqrt(Math.max(0, share)) * (1 - 0.03 * share) * (1 - lost);
    shown = made.meterLag ? shown + (passed - shown) * -Math.expm1(-step / made.meterLag) : passed;
    kept = at === 0 ? kept : correlation * kept + fresh * normal();
    time[at] = t;
    const read = pressure + noise * normal();
    depression[at] = read;
    flow[at] = read > 0 ? shown * (1 + flowNoise * kept) * Math.sqrt(TARGET / read) : Number.NaN;
  }
  return { samples: { time, depression }, flow };
}

function response({ timeConstant, naturalFrequency, damping }: MadeTrace, t: number): number {
  if (naturalFrequency !== undefined) return secondOrder(t, naturalFrequency, damping ?? 1);
  return timeConstant === undefined ? 1 : firstOrder(t, timeConstant);
}
