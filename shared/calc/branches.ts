// Tells rows taken on the way up from rows taken on the way down.
import type { Branch } from "../model/result.ts";

/**
 * The branch of each lift, in the order in which the rows were taken: rising if it is the first or above the one before,
 * falling if below, else as the one before. A lift that is missing (NaN) has none and is nobody's "one before".
 */
export function branchesOf(lifts: readonly number[]): (Branch | undefined)[] {
  const branches: (Branch | undefined)[] = [];
  let before = Number.NaN;
  let branch: Branch = "rising";
  for (const lift of lifts) {
    if (Number.isNaN(lift)) {
      branches.push(undefined);
      continue;
    }
    if (lift > before) branch = "rising";
    else if (lift < before) branch = "falling";
    before = lift;
    branches.push(branch);
  }
  return branches;
}
