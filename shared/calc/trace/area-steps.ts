// Finds where flow lets go of a wall, or comes back to it: a step of the apparent area that scatter does not make.
import type { AreaStep, TraceSamples } from "../../model/trace-result.ts";
import { groupMeans, groupSize } from "./groups.ts";
import { jumpAt, meanOf } from "./jump.ts";
import { mostLikelyStep, type Series, type Step } from "./most-likely-step.ts";

/** At smaller shares of the target the area is mostly noise of the depression (common practice, no published source). */
export const LEAST_DEPRESSION = 0.4;
/** Chance of a false alarm in a trace without a step. */
const FALSE_ALARMS = 0.05;
/** A smaller step is none that an engine or a porter would notice (common practice, no published source). */
export const LEAST_STEP = 0.005;
const MOST_GROUPS = 200;
const MOST_STEPS = 4;
const LEAST_GROUPS = 12;
/** So many groups on both sides of a step say whether it is one, and not a slope. */
const NEIGHBOURS = 4;
/** Groups within which steps of one direction are one. */
const ONE_EVENT = 10;
/** This much of a step must be there at once. */
const AT_ONCE = 0.5;

/**
 * The steps of a trace in the order of time. The logarithm of the apparent area is taken as a constant, a part that goes
 * with the depression (air is compressible), one that goes with its rate and the square of it (a meter that lags), a slow drift, and noise that may
 * hang together; a step is what does not fit into that at a false-alarm rate of 5 % a trace (see `most-likely-step.ts`).
 * What is found is added to the model, and the next one is looked for. Steps that do not come at once, or are below half a
 * per cent, are left out.
 */
export function areaSteps(
  samples: TraceSamples,
  flow: Float64Array,
  target: number,
  within: number,
): readonly AreaStep[] {
  const groups = usedGroups(samples, flow, target);
  const { time, depression, values, rate } = groups;
  if (values.length < LEAST_GROUPS) return [];
  const scatter = scatterOf(values, depression, target);
  const smooth = [
    values.map(() => 1),
    depression.map((value) => value / target),
    rate,
    rate.map((value) => value * value),
    time.map((value) => value - (time[0] ?? 0)),
  ];
  return joined(likelySteps({ values, smooth, scatter }))
    .filter(({ index, size }) => Math.abs(Math.expm1(size)) >= LEAST_STEP && isAtOnce(values, index, size))
    .map((step) => described(step, groups, samples, flow, within))
    .sort((a, b) => a.time - b.time);
}

/** Steps one after another; with each new one those before are looked for again beside it, and go if they were its shadow. */
function likelySteps({ values, smooth, scatter }: Series): readonly Step[] {
  const searched = (others: readonly Step[]) => {
    const columns = others.map(({ index }) => values.map((_, at) => (at < index ? 0 : 1)));
    const places = others.map(({ index }) => index);
    return mostLikelyStep({ values, smooth: [...smooth, ...columns], scatter }, FALSE_ALARMS, places);
  };
  let steps: readonly Step[] = [];
  for (let round = 0; round < MOST_STEPS; round++) {
    const next = searched(steps);
    if (next === undefined) break;
    steps = [...steps, next];
    for (const step of steps.length > 1 ? steps : []) {
      const others = steps.filter((other) => other !== step);
      const again = searched(others);
      steps = again === undefined ? others : [...others, again];
    }
  }
  return steps;
}

/** Steps of one direction close behind each other are one that took some samples: its size is theirs together. */
function joined(steps: readonly Step[]): readonly Step[] {
  const all: Step[] = [];
  for (const step of [...steps].sort((a, b) => a.index - b.index)) {
    const before = all.at(-1);
    if (before === undefined || step.index - before.index > ONE_EVENT || step.size * before.size < 0) {
      all.push(step);
      continue;
    }
    const larger = Math.abs(step.size) > Math.abs(before.size) ? step : before;
    all[all.length - 1] = {
      ...larger,
      size: step.size + before.size,
      error: Math.hypot(step.error, before.error),
    };
  }
  return all;
}

function described(
  { index, size, error, chance }: Step,
  { time, depression, values, first, length }: Groups,
  samples: TraceSamples,
  flow: Float64Array,
  within: number,
): AreaStep {
  const level = meanOf(values, index - NEIGHBOURS, index);
  const change = Math.expm1(size);
  const before = depression[index - 1] ?? Number.NaN;
  const rise = before - (depression[Math.max(0, index - NEIGHBOURS)] ?? before);
  const start = first[index - 1] ?? 0;
  const end = Math.min(flow.length, (first[index] ?? 0) + length);
  return {
    kind: change < 0 ? "let-go" : "re-attached",
    time:
      length === 1 ? (time[index] ?? Number.NaN) : (samples.time[placeIn(flow, start, end)] ?? Number.NaN),
    depression: before,
    phase: rise > within / 2 ? "rising" : rise < -within / 2 ? "falling" : "holding",
    size: Math.abs(change),
    error: error * (1 + change),
    before: Math.exp(level),
    after: Math.exp(level + size),
    chance,
  };
}

/** Neighbouring samples taken together, those with enough depression and a flow. */
interface Groups {
  readonly time: Float64Array;
  readonly depression: Float64Array;
  /** Natural logarithm of the apparent area, but for a constant. */
  readonly values: Float64Array;
  /** Relative rate of the depression, 1/s. */
  readonly rate: Float64Array;
  /** The first sample of each, and how many samples make one. */
  readonly first: Uint32Array;
  readonly length: number;
}

function usedGroups({ time, depression }: TraceSamples, flow: Float64Array, target: number): Groups {
  let used = 0;
  for (const value of depression) if (value >= LEAST_DEPRESSION * target) used++;
  const length = groupSize(used, MOST_GROUPS);
  const grouped = (values: Float64Array) => groupMeans(values, 0, time.length, length);
  const all = { time: grouped(time), depression: grouped(depression), flow: grouped(flow) };
  const rate = rates(all.time, all.depression);
  const kept = Uint32Array.from(all.time.keys()).filter(
    (at) => (all.depression[at] ?? 0) >= LEAST_DEPRESSION * target && (all.flow[at] ?? 0) > 0,
  );
  const pick = (values: Float64Array) => Float64Array.from(kept, (at) => values[at] ?? Number.NaN);
  return {
    time: pick(all.time),
    depression: pick(all.depression),
    values: pick(all.flow).map(Math.log),
    rate: pick(rate),
    first: kept.map((at) => at * length),
    length,
  };
}

/**
 * Relative rate of the depression, 1/s, over some neighbours on both sides, so that its own noise is small; of an
 * exponential approach that is its rate times a constant, which is all that is asked.
 */
function rates(time: Float64Array, depression: Float64Array): Float64Array {
  const last = time.length - 1;
  return depression.map((value, at) => {
    const [before, after] = [Math.max(0, at - NEIGHBOURS), Math.min(last, at + NEIGHBOURS)];
    const passed = (time[after] ?? 0) - (time[before] ?? 0);
    return passed > 0 ? ((depression[after] ?? 0) - (depression[before] ?? 0)) / passed / value : 0;
  });
}

/**
 * Noise of the area at each depression: that of the depression counts half, and for more where the depression is small;
 * that of the flow is taken as relative. Both are estimated from second differences, which no slope gets into (the variance of
 * one is six times that of a value).
 */
function scatterOf(values: Float64Array, depression: Float64Array, target: number): Float64Array {
  const high = (at: number) => (depression[at] ?? 0) >= 0.75 * target;
  const all = meanSquareOfDifferences(values, high) / 6;
  const ofDepression = Math.sqrt(meanSquareOfDifferences(depression, high) / 6);
  const share = (pressure: number) => (ofDepression / (2 * pressure)) ** 2;
  const ofFlow = Math.max(all - share(target), all * 0.1);
  // Only their ratios count, so that a series without any noise may have any.
  return depression.map((pressure) => Math.sqrt(ofFlow + share(pressure)) || 1);
}

function meanSquareOfDifferences(values: Float64Array, isUsed: (at: number) => boolean): number {
  const squares: number[] = [];
  for (let at = 1; at + 1 < values.length; at++) {
    if (!isUsed(at)) continue;
    squares.push(((values[at - 1] ?? 0) - 2 * (values[at] ?? 0) + (values[at + 1] ?? 0)) ** 2);
  }
  squares.sort((a, b) => a - b);
  // The median, so that a step counts like any other; of a squared normal it is 0.4549 times the mean.
  const median = (squares[Math.floor(squares.length / 2)] ?? 0) / 0.4549364;
  // A display with few digits shows most samples like their neighbours.
  return median > 0 ? median : squares.reduce((sum, square) => sum + square, 0) / Math.max(1, squares.length);
}

/** Whether half of the step stands between the few values before it and the few behind. */
function isAtOnce(values: Float64Array, index: number, size: number): boolean {
  return jumpAt(values, index, NEIGHBOURS) / size > AT_ONCE;
}

/** The first sample of the higher or lower level among those from `from` up to `to`: the split with the least squares. */
function placeIn(values: Float64Array, from: number, to: number): number {
  if (to - from <= 2) return from + 1;
  let sum = 0;
  for (let at = from; at < to; at++) sum += values[at] ?? 0;
  let before = 0;
  let best = from + 1;
  let most = -1;
  for (let at = from + 1; at < to; at++) {
    before += values[at - 1] ?? 0;
    const [left, right] = [at - from, to - at];
    const contrast = (before / left - (sum - before) / right) ** 2 * ((left * right) / (to - from));
    if (contrast > most) [best, most] = [at, contrast];
  }
  return best;
}
