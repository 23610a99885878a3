// How steeply flow rises with lift at a lift that need not be a station.
import type { Station } from "../model/result.ts";
import { firstFrom } from "./curve-at.ts";

/**
 * Slope of a branch at a lift, m2/s; `stations` by rising lift. A station's own at its lift, that of the straight line
 * between two stations, that of the nearest station beyond the first and the last; 0 without stations.
 */
export function slopeAt(stations: readonly Station[], lift: number): number {
  const at = firstFrom(stations, lift);
  const below = stations[at - 1];
  const above = stations[at];
  if (below === undefined || above === undefined || above.lift === lift) return (above ?? below)?.slope ?? 0;
  return (above.flow - below.flow) / (above.lift - below.lift);
}
