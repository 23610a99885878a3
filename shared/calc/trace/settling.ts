// When the depression had come up: the last sample outside the band around the target, plus one sample.
import type { Settling, TraceSamples } from "../../model/trace-result.ts";

/** A band's edge counts as inside, also where the last binary digit of a written number says otherwise. */
const EDGE = 1 + 1e-9;
/** Depression below this share of the target after the band has been left says that the bench was let down. */
const LET_DOWN = 0.5;

/**
 * One past the last sample of the hold. Where the depression leaves the band and then falls below half the target, the
 * bench is being let down, and what comes then is no longer part of the approach.
 */
export function endOfHold({ depression }: TraceSamples, target: number, within: number): number {
  const count = depression.length;
  let last = count - 1;
  let lowest = Number.POSITIVE_INFINITY;
  while (last >= 0 && isOutside(depression[last] ?? Number.NaN, target, within)) {
    lowest = Math.min(lowest, depression[last] ?? lowest);
    last--;
  }
  return last >= 0 && lowest < LET_DOWN * target ? last + 1 : count;
}

/**
 * Enter and stay: the first sample from which on the depression is `within` Pa of the target up to the end of the hold
 * (the settling time of a step response as control engineering defines it). `undefined` where it never stays.
 */
export function settling(
  { time, depression }: TraceSamples,
  end: number,
  target: number,
  within: number,
): Settling | undefined {
  let last = end - 1;
  while (last >= 0 && !isOutside(depression[last] ?? Number.NaN, target, within)) last--;
  const first = last + 1;
  if (first >= end) return undefined;
  const at = time[first] ?? 0;
  return { time: at, step: first === 0 ? 0 : at - (time[first - 1] ?? at) };
}

function isOutside(depression: number, target: number, within: number): boolean {
  return Math.abs(depression - target) > within * EDGE;
}
