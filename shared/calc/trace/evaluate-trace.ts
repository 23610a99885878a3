// Computes a trace: how the bench came up, when it held, what it read then, and whether the port let go on the way.
import type { Trace } from "../../model/model.ts";
import type { Setup } from "../../model/setup.ts";
import type { TraceProblem, TraceResult, TraceSamples } from "../../model/trace-result.ts";
import { approachFit } from "./approach-fit.ts";
import { areaSteps } from "./area-steps.ts";
import { cleanSamples } from "./clean-samples.ts";
import { gapsOf } from "./gaps.ts";
import { groupMeans, groupSize } from "./groups.ts";
import { endOfHold, settling } from "./settling.ts";
import { steadyWindow } from "./steady-window.ts";
import { areaFactor, traceFlow } from "./trace-flow.ts";

/** A depression this many times the target was written in another unit than it is taken for (common practice). */
const FAR_BEYOND = 3;
/** The approach is fitted over this many times the time it took, so that a long hold does not drown it. */
const APPROACHES = 3;
const MOST_FITTED = 400;
const MOST_SMOOTHED = 2000;
/** A logger that is quicker than so many samples a trace logs its own noise; neighbours are averaged before the band is looked at. */
const MOST_SETTLED = 5000;
/** An overshoot stands out by so many standard deviations of the smoothed depression. */
const STANDS_OUT = 3;

/** The samples of a trace as they were read, and what was wrong with them already. */
export interface RawTrace {
  readonly samples: TraceSamples | undefined;
  readonly problems: readonly TraceProblem[];
  /** Whether the display's numbers are a volume flow although the bench shows something else. */
  readonly isFlow: boolean;
}

const NONE: TraceSamples = { time: new Float64Array(0), depression: new Float64Array(0) };

/** The result of a trace in the set-up of its run. Never throws; a trace that cannot be used has problems and no results. */
export function evaluateTrace(trace: Trace, setup: Setup, raw: RawTrace): TraceResult {
  const empty: TraceResult = {
    trace,
    setup,
    samples: NONE,
    areaFactor: areaFactor(setup),
    problems: raw.problems,
    interval: 0,
    gaps: undefined,
    settling: undefined,
    overshoot: undefined,
    approach: undefined,
    steady: undefined,
    steps: [],
  };
  if (raw.samples === undefined) return empty;
  const clean = cleanSamples(raw.samples);
  const problems = [...raw.problems, ...clean.problems];
  if (!clean.usable) return { ...empty, problems };
  const { samples } = clean;
  const target = setup.target.value.value;
  const within = setup.within.value;
  const doubt = doubtful(samples, target);
  if (doubt !== undefined) return { ...empty, samples, problems: [...problems, doubt] };

  const flow = traceFlow(setup, trace.lift?.value, samples, raw.isFlow);
  const steps = flow === undefined ? [] : areaSteps(samples, flow, target, within);
  const end = endOfHold(samples, target, within);
  const settled = settledIn(samples, end, target, within);
  const lastStep = steps.findLast(({ time }) => time < (samples.time[end - 1] ?? 0))?.time;
  const holds = settled && Math.max(settled.time, lastStep ?? 0);
  const from = holds === undefined ? end : firstAt(samples.time, holds);
  const steady = settled && steadyWindow(samples, flow, from, end, within);
  const usual = interval(samples.time);
  return {
    ...empty,
    samples,
    ...(flow && { flow }),
    problems,
    interval: usual,
    gaps: gapsOf(samples.time, usual),
    settling: settled,
    overshoot: overshoot(samples, end, steady?.depression.mean),
    approach: fitted(samples, approachEnd(samples, end, settled?.time, steps[0]?.time)),
    steady,
    steps,
  };
}

function settledIn(samples: TraceSamples, end: number, target: number, within: number) {
  const size = groupSize(samples.time.length, MOST_SETTLED);
  if (size === 1) return settling(samples, end, target, within);
  const time = groupMeans(samples.time, 0, end, size);
  const depression = groupMeans(samples.depression, 0, end, size);
  return settling({ time, depression }, time.length, target, within);
}

function doubtful({ depression }: TraceSamples, target: number): TraceProblem | undefined {
  let highest = Number.NEGATIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  for (const value of depression) {
    if (value > highest) highest = value;
    if (value < lowest) lowest = value;
  }
  if (highest > FAR_BEYOND * target) return { kind: "far-beyond", highest };
  return -lowest > highest ? { kind: "negative" } : undefined;
}

/** One past the last sample that belongs to the approach: a port that lets go moves the depression too. */
function approachEnd(
  { time }: TraceSamples,
  end: number,
  settled: number | undefined,
  step: number | undefined,
): number {
  const first = time[0] ?? 0;
  const enough = settled === undefined ? Number.POSITIVE_INFINITY : first + APPROACHES * (settled - first);
  const last = firstAt(time, Math.min(enough, step ?? Number.POSITIVE_INFINITY));
  return Math.min(end, Math.max(last, 0));
}

function fitted({ time, depression }: TraceSamples, end: number) {
  const size = groupSize(end, MOST_FITTED);
  return approachFit(groupMeans(time, 0, end, size), groupMeans(depression, 0, end, size));
}

/** Pa above the steady mean; a peak that scatter makes as well is none. */
function overshoot({ depression }: TraceSamples, end: number, mean: number | undefined): number | undefined {
  if (mean === undefined) return undefined;
  const smooth = groupMeans(depression, 0, end, groupSize(end, MOST_SMOOTHED));
  const highest = smooth.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const tail = smooth.subarray(Math.floor(smooth.length * 0.75));
  const level = tail.reduce((sum, value) => sum + value, 0) / tail.length;
  const scatter = Math.sqrt(tail.reduce((sum, value) => sum + (value - level) ** 2, 0) / tail.length);
  return highest - mean > STANDS_OUT * scatter ? highest - mean : undefined;
}

/** The first sample at or behind a time; the number of samples where there is none. */
function firstAt(time: Float64Array, at: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] ?? 0) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The median step, of up to a thousand samples. */
function interval(time: Float64Array): number {
  const every = Math.max(1, Math.floor(time.length / 1000));
  const steps: number[] = [];
  for (let at = every; at < time.length; at += every) {
    steps.push((time[at] ?? 0) - (time[at - 1] ?? 0));
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}
