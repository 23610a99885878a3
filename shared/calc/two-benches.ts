// One port at one stage on two benches: how far the benches stand apart, and what one of them does not show.
import type { FallBack, RunResult, Station } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { mismatches } from "./comparable.ts";
import { type CurveUncertainty, curveAt, curveUncertainty } from "./curve-at.ts";
import { enNumber } from "./en-number.ts";
import { type FlatStretch, flatStretch } from "./flat-top.ts";
import { isSameLift } from "./gain.ts";
import { widening } from "./repeatability.ts";
import { slowestSettle } from "./settle-times.ts";
import { summary } from "./summary.ts";

/** Two-sided 95 % point of the normal distribution. */
const TWO_SIDED_95 = 1.96;

/** One lift on both benches; flows in m3/s. */
export interface BenchLift {
  readonly lift: number;
  readonly first: number;
  readonly second: number;
  /** Whether both benches read this lift; else one of them is on the line between its stations. */
  readonly isRead: boolean;
  /** Of the second against the first, both with all their uncertainty; from -1 to 1 they agree. */
  readonly en: number | undefined;
  /** What is left of the second over the first once the scale ratio is taken off, relative. */
  readonly residual: number | undefined;
  /** What chance leaves at most in 95 % of cases. */
  readonly noise: number;
}

/** How the second bench's scale stands to the first one's. */
export interface ScaleRatio {
  /** Second over first. */
  readonly ratio: number;
  /** Expanded (k = 2), relative: what the readings and the air leave open. */
  readonly uncertainty: number;
  /** How many lifts it was taken from. */
  readonly lifts: number;
  /** Expanded (k = 2), relative, of the two flow scales as the benches state them; missing where one does not. */
  readonly stated: number | undefined;
  /** Of the ratio against 1, with all of that; missing where a bench does not state its scale. */
  readonly en: number | undefined;
}

/** A fall-back that one bench resolves and the other does not show. */
export interface HiddenFallBack {
  readonly fall: FallBack;
  readonly resolvedBy: "first" | "second";
  /** The flat top of the other one at those lifts, if that is what it shows. */
  readonly flat: FlatStretch | undefined;
  /** Of the other one: the station nearest to where the fall-back is clearest. */
  readonly at: Station;
  readonly apart: DropsApart;
}

/** Between the lifts of a fall-back's onset and of its clearest station, relative to the flow at the onset. */
export interface DropsApart {
  /** On the bench that does not show it; below zero where flow climbs there. */
  readonly drop: number;
  /** How much more the other one drops. */
  readonly difference: number;
  /** What two benches that drop alike differ by at most in 95 % of cases. */
  readonly chance: number;
}

/** How one of the runs was taken; s. */
export interface Approach {
  /** Least, median and longest settle time of its stations; missing where none was timed. */
  readonly settle: { readonly least: number; readonly median: number; readonly most: number } | undefined;
  readonly time: number | undefined;
}

export interface TwoBenches {
  readonly lifts: readonly BenchLift[];
  readonly scale: ScaleRatio | undefined;
  readonly hidden: readonly HiddenFallBack[];
  readonly approaches: { readonly first: Approach; readonly second: Approach };
}

/** Whether two runs are of one port, stage, cylinder and direction, on two benches, and may be compared. */
export function isSamePortOnTwoBenches(a: Setup, b: Setup): boolean {
  return (
    a.bench !== undefined &&
    b.bench !== undefined &&
    a.bench.id !== b.bench.id &&
    a.port !== undefined &&
    a.port.id === b.port?.id &&
    a.run.stage !== undefined &&
    a.run.stage === b.run.stage &&
    a.run.cylinder === b.run.cylinder &&
    mismatches(a, b).length === 0
  );
}

/**
 * Two runs of one port on two benches. The E_n numbers count every uncertainty, the benches' scales among them. The scale
 * ratio is the mean of the ratios weighted with their variances without the scales, in logarithms, so that exchanging the
 * benches inverts it; where they scatter more than that, its uncertainty grows with them (R. T. Birge, Phys. Rev. 40 (1932)
 * 207), and what all lifts of a run share (air, leak) is added whole. Lifts at which either bench resolves a fall-back are
 * left out of it: the port itself is not the same there.
 */
export function twoBenches(first: RunResult, second: RunResult): TwoBenches {
  const pairs = sharedPairs(first, second);
  const scale = scaleRatio(pairs, first, second);
  const wider = Math.max(widening(first.repeatability), widening(second.repeatability));
  return {
    lifts: pairs.map(({ lift, isRead, a, b }) => ({
      lift,
      first: a.flow,
      second: b.flow,
      isRead,
      en: enNumber(b.flow, b.flow * allOf(b, second), a.flow, a.flow * allOf(a, first)),
      residual: scale && b.flow / a.flow / scale.ratio - 1,
      noise: TWO_SIDED_95 * wider * Math.hypot(a.own, b.own),
    })),
    scale,
    hidden: hiddenFallBacks(first, second),
    approaches: { first: approach(first), second: approach(second) },
  };
}

interface PairedFlow extends CurveUncertainty {
  readonly flow: number;
}

interface Pair {
  readonly lift: number;
  readonly isRead: boolean;
  readonly a: PairedFlow;
  readonly b: PairedFlow;
}

/** The rising lifts of either run at which both have a flow. */
function sharedPairs(first: RunResult, second: RunResult): readonly Pair[] {
  const all = [...first.rising, ...second.rising].map(({ lift }) => lift).sort((a, b) => a - b);
  return all.flatMap((lift, index): readonly Pair[] => {
    if (isSameLift(lift, all[index - 1])) return [];
    const a = curveAt(first.rising, lift, first.repeatability);
    const b = curveAt(second.rising, lift, second.repeatability);
    if (a === undefined || b === undefined || !(a.flow > 0) || !(b.flow > 0)) return [];
    return [
      {
        lift,
        isRead: a.isRead && b.isRead,
        a: { flow: a.flow, ...curveUncertainty(a, scaleOf(first)) },
        b: { flow: b.flow, ...curveUncertainty(b, scaleOf(second)) },
      },
    ];
  });
}

/** Standard uncertainty of a bench's flow scale, relative. */
function scaleOf({ setup: { bench } }: RunResult): number {
  return (bench?.uncertainty?.value ?? 0) / 2;
}

/** Expanded uncertainty (k = 2) of a flow with all that goes into it, relative. */
function allOf({ own, shared }: CurveUncertainty, result: RunResult): number {
  return 2 * Math.hypot(own, shared, scaleOf(result));
}

function scaleRatio(pairs: readonly Pair[], first: RunResult, second: RunResult): ScaleRatio | undefined {
  const falls = [...first.fallBacks, ...second.fallBacks].filter(({ resolved }) => resolved);
  const sound = pairs.filter(
    ({ lift }) => !falls.some(({ onset, last }) => lift > onset.lift && lift <= last.lift),
  );
  const used = sound.filter(({ a, b }) => Math.hypot(a.own, b.own) > 0);
  // What was read on one side and between two stations on the other counts only where nothing else is there.
  const read = used.filter(({ isRead }) => isRead);
  const taken = read.length >= 2 ? read : used;
  if (taken.length === 0) return undefined;
  let weights = 0;
  let weighted = 0;
  let squares = 0;
  for (const { a, b } of taken) {
    const weight = 1 / (a.own ** 2 + b.own ** 2);
    const log = Math.log(b.flow / a.flow);
    weights += weight;
    weighted += weight * log;
    squares += weight * log ** 2;
  }
  const mean = weighted / weights;
  const scatter = taken.length < 2 ? 0 : (squares - weights * mean ** 2) / (taken.length - 1);
  const shared = taken.reduce((sum, { a, b }) => sum + a.shared ** 2 + b.shared ** 2, 0) / taken.length;
  const uncertainty = 2 * Math.sqrt(Math.max(1, scatter) / weights + shared);
  const [one, other] = [first.setup.bench?.uncertainty?.value, second.setup.bench?.uncertainty?.value];
  const stated = one === undefined || other === undefined ? undefined : Math.hypot(one, other);
  return {
    ratio: Math.exp(mean),
    uncertainty,
    lifts: taken.length,
    stated,
    en: stated === undefined ? undefined : enNumber(mean, uncertainty, 0, stated),
  };
}

/**
 * The fall-backs that one of two runs resolves and the other, whose stations reach from the onset to where it is clearest,
 * does not: no resolved fall-back of its own begins or lasts there.
 */
export function hiddenFallBacks(first: RunResult, second: RunResult): readonly HiddenFallBack[] {
  return [...hiddenBy(first, second, "first"), ...hiddenBy(second, first, "second")];
}

/** The fall-backs that `seen` resolves and `other` does not, where that one has been as far. */
function hiddenBy(
  seen: RunResult,
  other: RunResult,
  resolvedBy: HiddenFallBack["resolvedBy"],
): readonly HiddenFallBack[] {
  const [lowest, highest] = [other.rising[0], other.rising.at(-1)];
  if (!seen.fallBacks.some(({ resolved }) => resolved)) return [];
  if (lowest === undefined || highest === undefined) return [];
  const reaches = (from: number, to: number) =>
    (lowest.lift < from || isSameLift(lowest.lift, from)) &&
    (highest.lift > to || isSameLift(highest.lift, to));
  const flat = flatStretch(other);
  return seen.fallBacks.flatMap((fall): readonly HiddenFallBack[] => {
    const { onset, last, clearest, resolved } = fall;
    const isThere = (from: number, to: number) => from <= last.lift && to > onset.lift;
    if (!resolved || !reaches(onset.lift, clearest.station.lift)) return [];
    const isShown = other.fallBacks.some(
      (theirs) => theirs.resolved && isThere(theirs.onset.lift, theirs.last.lift),
    );
    if (isShown) return [];
    const apart = dropsApart(seen, other, fall);
    if (apart === undefined || !(apart.difference > apart.chance)) return [];
    const [from, to] = [flat?.stations[0]?.lift, flat?.stations.at(-1)?.lift];
    const isFlat = from !== undefined && to !== undefined && isThere(from, to);
    const at = nearest(other.rising, clearest.station.lift) ?? highest;
    return [{ fall, resolvedBy, flat: isFlat ? flat : undefined, at, apart }];
  });
}

/**
 * How much less the other bench drops between the same two lifts. Two benches that see the same drop may well resolve it on one
 * side only, so that it is hidden on the other only if the difference of the two drops is more than chance. Its limit is that of the
 * fall-back itself, for a flat curve of as many stations, with the scatter of both benches: the two lifts were chosen for the
 * drop between them.
 */
function dropsApart(
  seen: RunResult,
  other: RunResult,
  { onset, clearest }: FallBack,
): DropsApart | undefined {
  const [above, below] = [onset.lift, clearest.station.lift].map((lift) =>
    curveAt(other.rising, lift, other.repeatability),
  );
  if (above === undefined || below === undefined || !(above.flow > 0)) return undefined;
  const drop = 1 - below.flow / above.flow;
  const { deviation } = seen.repeatability;
  const own = deviation * Math.sqrt(1 / onset.rows.length + 1 / clearest.station.rows.length);
  return {
    drop,
    difference: clearest.drop - drop,
    chance: (clearest.chance / own) * Math.hypot(own, above.spread, below.spread),
  };
}

function nearest(stations: readonly Station[], lift: number): Station | undefined {
  let best = stations[0];
  for (const station of stations) {
    if (best !== undefined && Math.abs(station.lift - lift) < Math.abs(best.lift - lift)) best = station;
  }
  return best;
}

function approach(result: RunResult): Approach {
  const times = [...result.rising, ...result.falling]
    .flatMap((station) => slowestSettle(result, station) ?? [])
    .sort((a, b) => a - b);
  const [least, most] = [times[0], times.at(-1)];
  const half = times.length / 2;
  const median = ((times[Math.ceil(half) - 1] ?? 0) + (times[Math.floor(half)] ?? 0)) / 2;
  return {
    settle: least === undefined || most === undefined ? undefined : { least, median, most },
    time: summary(result).time,
  };
}
