// A flat top that was approached slowly is a question: the same port may let go when the bench is quick.
import type { Repeatability, RunResult, Station } from "../model/result.ts";
import { columnValues } from "./column-values.ts";
import { liftToFlatten } from "./port-areas.ts";
import { widening } from "./repeatability.ts";
import { type QuickLimit, quickLimit, slowestSettle } from "./settle-times.ts";

/** A station belongs to the top of a curve if it reaches this share of the peak. */
const SHARE_OF_TOP = 0.95;
/** One-sided 95 % point of the normal distribution. */
const ONE_SIDED_95 = 1.645;
/** From here on a flat is one whatever the geometry says. */
const ENOUGH_STATIONS = 3;
const ROUNDING = 1e-9;

/** Consecutive rising stations over which the flow does not climb. */
export interface FlatStretch {
  readonly stations: readonly Station[];
  /** Of the last station over the first, relative to the first. */
  readonly rise: number;
  /** What the rise of a truly flat stretch exceeds by chance in 5 % of cases, relative. */
  readonly chance: number;
}

/** A flat stretch that was approached too slowly to be trusted. */
export interface FlatTop extends FlatStretch {
  /** The station behind the first whose approach took longest, and its time in s. */
  readonly slowest: Station;
  readonly settle: number;
  readonly quick: QuickLimit;
  /** Lift in m from which a curve must flatten, where the port says enough for it. */
  readonly mustFlattenFrom: number | undefined;
}

/**
 * The longest stretch of consecutive rising stations within 5 % of the peak whose last does not stand above its first by
 * more than 1.645 s sqrt(1/n1 + 1/n2) (s relative repeatability, n readings averaged; widened by t/z where s is pooled),
 * without a resolved fall-back in it; of equally long ones the first. `undefined` where no two stations make one.
 */
export function flatStretch({
  rising,
  fallBacks,
  repeatability,
}: Pick<RunResult, "rising" | "fallBacks" | "repeatability">): FlatStretch | undefined {
  const peak = rising.reduce((highest, { flow }) => Math.max(highest, flow), 0);
  if (!(peak > 0)) return undefined;
  const fallen = fallBacks.filter(({ resolved }) => resolved);
  const isTop = ({ flow, lift }: Station) =>
    flow >= SHARE_OF_TOP * peak && !fallen.some(({ onset, last }) => lift > onset.lift && lift <= last.lift);
  let longest: readonly Station[] = [];
  for (const top of consecutive(rising, isTop)) {
    const stretch = longestFlat(top, repeatability);
    if (stretch.length > longest.length) longest = stretch;
  }
  const first = longest[0];
  const last = longest.at(-1);
  if (first === undefined || last === undefined || longest.length < 2) return undefined;
  return {
    stations: longest,
    rise: last.flow / first.flow - 1,
    chance: chanceOf(first.rows.length, last.rows.length, repeatability),
  };
}

/**
 * The flat stretch of a run, if it is questioned: one of its stations behind the first took longer to settle than the
 * bench's `quick` (else 1.5 times its usual `settle`), and it has three stations or more or begins below the lift where
 * the gap under the valve reaches the throat's area (L/D 0.25 where that is unknown), so that geometry does not explain it.
 */
export function flatTop(result: RunResult): FlatTop | undefined {
  const quick = quickLimit(result.setup.bench);
  if (quick === undefined || !isSlow(result, quick)) return undefined;
  const stretch = flatStretch(result);
  const first = stretch?.stations[0];
  if (stretch === undefined || first === undefined) return undefined;
  let slowest: Station | undefined;
  let settle = quick.time * (1 + ROUNDING);
  for (const station of stretch.stations.slice(1)) {
    const time = slowestSettle(result, station);
    if (time === undefined || time <= settle) continue;
    slowest = station;
    settle = time;
  }
  if (slowest === undefined) return undefined;
  const { port } = result.setup;
  const mustFlattenFrom = port && liftToFlatten(port)?.lift;
  const isExplained = mustFlattenFrom === undefined || first.lift >= mustFlattenFrom;
  if (stretch.stations.length < ENOUGH_STATIONS && isExplained) return undefined;
  return { ...stretch, slowest, settle, quick, mustFlattenFrom };
}

/** Whether any approach of a run was slow: most runs have none, which is seen sooner than a flat. */
function isSlow({ setup: { run } }: RunResult, { time }: QuickLimit): boolean {
  const settle = columnValues(run.table, "settle");
  if (settle === undefined) return false;
  for (const row of run.table?.rows ?? []) {
    if (settle.number(row) > time) return true;
  }
  return false;
}

function chanceOf(first: number, last: number, repeatability: Repeatability): number {
  return ONE_SIDED_95 * repeatability.deviation * widening(repeatability) * Math.sqrt(1 / first + 1 / last);
}

function consecutive(stations: readonly Station[], is: (station: Station) => boolean): Station[][] {
  const stretches: Station[][] = [[]];
  for (const station of stations) {
    if (is(station)) stretches.at(-1)?.push(station);
    else stretches.push([]);
  }
  return stretches;
}

/**
 * The longest part whose last station does not stand above its first. Among stations averaged from as many readings only
 * one that is higher than all before it can begin the longest part, and only one that is lower than all behind it can end
 * it; both kinds climb, so that one walk along the two finds the furthest end of every beginning.
 */
function longestFlat(stations: readonly Station[], repeatability: Repeatability): readonly Station[] {
  const groups = [...Map.groupBy(stations.keys(), (at) => stations[at]?.rows.length ?? 0)];
  const flow = (at: number) => stations[at]?.flow ?? 0;
  let from = 0;
  let to = 0;
  for (const [first, starts] of groups) {
    for (const [last, ends] of groups) {
      const limit = 1 + chanceOf(first, last, repeatability);
      const lowest = lowestFromEnd(ends, flow);
      let next = 0;
      for (const start of highestSoFar(starts, flow)) {
        while (next < lowest.length && flow(lowest[next] ?? 0) <= flow(start) * limit) next++;
        const end = lowest[next - 1] ?? start;
        if (end - start < to - from || (end - start === to - from && start >= from)) continue;
        from = start;
        to = end;
      }
    }
  }
  return stations.slice(from, to + 1);
}

function highestSoFar(places: readonly number[], flow: (at: number) => number): readonly number[] {
  let highest = Number.NEGATIVE_INFINITY;
  return places.filter((at) => {
    if (flow(at) <= highest) return false;
    highest = flow(at);
    return true;
  });
}

function lowestFromEnd(places: readonly number[], flow: (at: number) => number): readonly number[] {
  let lowest = Number.POSITIVE_INFINITY;
  return places
    .toReversed()
    .filter((at) => {
      if (flow(at) >= lowest) return false;
      lowest = flow(at);
      return true;
    })
    .reverse();
}
