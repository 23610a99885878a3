// What a reading that was taken before the bench had settled is worth, as the trace of its lift shows it.
import type { TraceResult } from "../../model/trace-result.ts";

export interface EarlyReading {
  /** s from opening the valve; when the depression first passed that of the reading, where no time was written. */
  readonly time: number;
  /** Pa, then. */
  readonly depression: number;
  /** Corrected flow then over that of the settled stretch, less 1: what no correction mends. */
  readonly off: number;
  /** Standard uncertainty of that. */
  readonly error: number;
}

/** Samples on both sides of a moment that are taken for its own. */
const AROUND = 2;

/** The trace at a time; `undefined` where it has no settled stretch with a flow, or no sample there. */
export function readingAt({ samples, flow, steady }: TraceResult, time: number): EarlyReading | undefined {
  const settled = steady?.flow;
  const at = samples.time.findIndex((value) => value >= time);
  if (flow === undefined || steady === undefined || settled === undefined || at < 0) return undefined;
  const near = flow.slice(Math.max(0, at - AROUND), at + AROUND + 1).filter(Number.isFinite);
  if (near.length === 0) return undefined;
  const mean = near.reduce((sum, value) => sum + value, 0) / near.length;
  // Neighbours hang together there as they do in the settled stretch.
  const worth = Math.max(1, (near.length * settled.effective) / steady.samples);
  return {
    time,
    depression: samples.depression[at] ?? Number.NaN,
    off: mean / settled.mean - 1,
    error: Math.hypot(settled.scatter / Math.sqrt(worth), settled.error) / settled.mean,
  };
}

/** When the depression first reaches a value, s. */
export function timeOfDepression({ samples }: TraceResult, depression: number): number | undefined {
  const at = samples.depression.findIndex((value) => value >= depression);
  return at < 0 ? undefined : samples.time[at];
}
