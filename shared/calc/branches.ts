// Tells rows taken on the way up from rows taken on the way down.
import type { Branch } from "../model/result.ts";

/**
 * Gives the branch of one lift after another, in the order in which the rows were taken: rising if it is the first or above
 * the one before, falling if below, else as the one before. `undefined` lifts are skipped and are nobody's "one before".
 */
export function branchFinder(): (lift: number | undefined) => Branch | undefined {
  let before: number | undefined;
  let branch: Branch = "rising";
  return (lift) => {
    if (lift === undefined) return undefined;
    if (before !== undefined && lift !== before) branch = lift > before ? "rising" : "falling";
    before = lift;
    return branch;
  };
}
