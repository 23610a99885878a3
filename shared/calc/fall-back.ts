// Finds where flow falls while the valve still opens, and says whether chance alone could have done it.
import type { FallBack, Repeatability, Station } from "../model/result.ts";
import { flatDropQuantile, studentFlatDropQuantile } from "./flat-drop.ts";

/** A station belongs to the flat of an onset if it reaches this share of it: what stands lower cannot be its equal. */
const SHARE_OF_FLAT = 0.95;

/**
 * The falls of a sweep's averaged rising stations, in lift order. The onset is the highest station so far, of equals the
 * later. A later, lower station is resolved where the drop relative to the onset exceeds `q(k) s sqrt(1/n1 + 1/n2)`: what
 * the largest drop of a flat curve of `k` stations exceeds by chance in 5 % of sweeps, by recursion on the running
 * maximum (see `flat-drop.ts`). Where `s` is pooled the limit is Student's form of the same. Drops below one standard
 * uncertainty are not reported.
 */
export function fallBacks(stations: readonly Station[], repeatability: Repeatability): FallBack[] {
  const found: FallBack[] = [];
  let onset = 0;
  let flat = 0;
  const judge = (end: number): void => {
    // An onset is never lower than the one before it, so that the flat of each begins no earlier.
    const least = SHARE_OF_FLAT * (stations[onset]?.flow ?? 0);
    while (flat < onset && (stations[flat]?.flow ?? 0) < least) flat++;
    report(stations, onset, end, Math.max(2, stations.length - flat), repeatability, found);
  };
  for (let i = 1; i < stations.length; i++) {
    const from = stations[onset];
    const here = stations[i];
    if (from === undefined || here === undefined) break;
    if (here.flow < from.flow) continue;
    judge(i);
    onset = i;
  }
  judge(stations.length);
  return found;
}

/** Whether a curve falls anywhere: most do not, which their numbers alone tell. */
export function everFalls(flows: readonly number[]): boolean {
  for (let at = 1; at < flows.length; at++) {
    if ((flows[at] ?? 0) < (flows[at - 1] ?? 0)) return true;
  }
  return false;
}

/** Judges the stations between an onset and its recovery (or the end of the sweep); `k` stations make its flat. */
function report(
  stations: readonly Station[],
  onsetIndex: number,
  end: number,
  k: number,
  repeatability: Repeatability,
  found: FallBack[],
): void {
  const onset = stations[onsetIndex];
  const last = stations[end - 1];
  if (onset === undefined || last === undefined || end - onsetIndex < 2 || !(onset.flow > 0)) return;
  const { deviation } = repeatability;
  const unit = (station: Station) => deviation * Math.sqrt(1 / onset.rows.length + 1 / station.rows.length);
  const drop = (station: Station) => (onset.flow - station.flow) / onset.flow;

  const lower = stations.slice(onsetIndex + 1, end);
  let deepest = last;
  let clearest = last;
  let largest = drop(last) / unit(last);
  for (const station of lower) {
    if (drop(station) > drop(deepest)) deepest = station;
    const units = drop(station) / unit(station);
    if (units <= largest) continue;
    clearest = station;
    largest = units;
  }
  if (largest < 1) return;
  const limit = flatDropLimit(k, repeatability);
  const depth = drop(deepest);
  const recovery = stations[end];
  found.push({
    onset,
    deepest,
    ...(recovery !== undefined && { recovery }),
    last,
    depth,
    chance: limit * unit(deepest),
    stations: k,
    resolved: largest > limit,
    clearest: { station: clearest, drop: drop(clearest), chance: limit * unit(clearest) },
    readingsNeeded: Math.floor(2 * ((limit * deviation) / depth) ** 2) + 1,
  });
}

/** What a flat curve of `k` stations exceeds in 5 % of sweeps, in standard uncertainties as far as these are known. */
function flatDropLimit(k: number, { degreesOfFreedom }: Repeatability): number {
  const limit =
    degreesOfFreedom === undefined ? flatDropQuantile(k) : studentFlatDropQuantile(k, degreesOfFreedom);
  return limit ?? Number.POSITIVE_INFINITY;
}
