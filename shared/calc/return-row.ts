// A run that goes home to its first lift says by that how far it has drifted.
import type { RowResult, RunResult } from "../model/result.ts";

/** The last usable row of a run, if it returns to the first one's lift after others in between. */
export function returnRow(result: Pick<RunResult, "usable" | "numbers" | "rows">): RowResult | undefined {
  const { usable, numbers } = result;
  const [first, last] = [usable[0], usable.at(-1)];
  if (first === undefined || last === undefined || first === last) return undefined;
  const home = numbers.lift[first];
  if (numbers.lift[last] !== home) return undefined;
  return usable.some((at) => numbers.lift[at] !== home) ? result.rows[last] : undefined;
}
