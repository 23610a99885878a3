// A logger beside a simulated bench: takes samples of an approach, with the noise of its transducers.
import { type Sample, STEP } from "./bench.ts";
import type { Normal } from "./random.ts";

export interface LoggerNoise {
  /** Standard deviation of a flow sample, relative, and how much of it goes over from one sample to the next. */
  readonly flow: number;
  readonly correlation: number;
  /** Standard deviation of a sample of the depression, Pa; each for itself. */
  readonly depression: number;
}

/** Every so many steps of an approach as the logger writes them down. */
export function logged(
  samples: readonly Sample[],
  every: number,
  { flow, correlation, depression }: LoggerNoise,
  normal: Normal,
): readonly Sample[] {
  const fresh = Math.sqrt(1 - correlation ** 2);
  let kept = normal();
  return samples
    .filter((_, index) => index % every === 0)
    .map((sample, index) => {
      kept = index === 0 ? kept : correlation * kept + fresh * normal();
      return {
        ...sample,
        depression: Math.max(0, sample.depression + depression * normal()),
        flow: Math.max(0, sample.flow * (1 + flow * kept)),
      };
    });
}

/** Steps of the simulation in so many seconds. */
export function stepsOf(seconds: number): number {
  return Math.round(seconds / STEP);
}
