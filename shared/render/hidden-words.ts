// What is said of a fall-back that one of two benches does not show, wherever it is said.
import type { HiddenFallBack } from "../calc/two-benches.ts";
import type { RunResult } from "../model/result.ts";
import { percent } from "./shown-percent.ts";
import { stationLift, stationSettle } from "./station-words.ts";

export type HiddenArgs = Readonly<
  Record<"depth" | "onset" | "lift" | "resolves" | "seen" | "hides" | "shows" | "apart" | "settles", string>
>;

export function hiddenMessage({ depth, onset, seen, hides, shows, apart, settles }: HiddenArgs): string {
  return `${seen} falls back ${depth} after ${onset}, and ${hides} ${shows} (${apart})${settles}`;
}

/** `first` and `second` are the runs that were looked at in this order. */
export function hiddenArgs(first: RunResult, second: RunResult, hidden: HiddenFallBack): HiddenArgs {
  const { fall, resolvedBy, flat, at, apart } = hidden;
  const [seen, hiding] = resolvedBy === "first" ? [first, second] : [second, first];
  const bench = ({ setup }: RunResult) => setup.bench?.id ?? "";
  const { station } = fall.clearest;
  const times = [stationSettle(seen, station), stationSettle(hiding, at)];
  const [from, to] = [flat?.stations[0], flat?.stations.at(-1)];
  return {
    depth: percent(fall.depth),
    onset: stationLift(seen, fall.onset),
    lift: stationLift(seen, station),
    resolves: bench(seen),
    seen: `${bench(seen)} (${seen.setup.run.id})`,
    hides: `${bench(hiding)} (${hiding.setup.run.id})`,
    shows:
      from === undefined || to === undefined
        ? "resolves none there"
        : `only goes flat, from ${stationLift(hiding, from)} to ${stationLift(hiding, to)}`,
    apart: `it ${apart.drop < 0 ? "climbs" : "drops"} ${percent(Math.abs(apart.drop))} between the same lifts; chance alone leaves two benches up to ${percent(apart.chance)} apart`,
    settles: times.includes(undefined) ? "" : `; they settled in ${times.join(" and ")} there`,
  };
}
