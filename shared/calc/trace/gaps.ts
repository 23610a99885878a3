// Where a trace has no samples although its logger was running.
import type { TraceGaps } from "../../model/trace-result.ts";

/** A step between two samples that is longer than so many usual ones is a gap (common practice, no published source). */
const FAR_APART = 5;

/** The gaps of a trace whose samples usually stand `interval` s apart, taken together; `undefined` where it has none. */
export function gapsOf(time: Float64Array, interval: number): TraceGaps | undefined {
  let count = 0;
  let missing = 0;
  let [from, to] = [0, 0];
  for (let at = 1; at < time.length; at++) {
    const [before, here] = [time[at - 1] ?? 0, time[at] ?? 0];
    const length = here - before;
    if (!isGap(length, interval)) continue;
    count++;
    missing += length;
    if (length > to - from) [from, to] = [before, here];
  }
  return count === 0 ? undefined : { count, missing, from, to };
}

/** Whether two neighbouring samples stand so far apart that some are missing between them. */
export function isGap(step: number, interval: number): boolean {
  return step > FAR_APART * interval * (1 + 1e-9);
}
