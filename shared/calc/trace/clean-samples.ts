// Takes out of a trace what no sample can be: no number, and a time that does not come after the one before.
import type { TraceProblem, TraceSamples } from "../../model/trace-result.ts";

/** A trace with fewer samples says nothing of how it came up. */
export const LEAST_SAMPLES = 8;
/** A larger share of samples out of order is no slip of a clock but a file that means something else. */
const MOST_BACKWARDS = 0.1;

export interface CleanSamples {
  readonly samples: TraceSamples;
  readonly problems: readonly TraceProblem[];
  /** Whether what is left says anything. */
  readonly usable: boolean;
}

/** The samples that can be used, in the order of time, and what was wrong with the others. `first` counts from 1. */
export function cleanSamples(raw: TraceSamples): CleanSamples {
  const count = raw.time.length;
  const kept = new Uint32Array(count);
  let size = 0;
  let latest = Number.NEGATIVE_INFINITY;
  const unread = { samples: 0, first: 0 };
  const backwards = { samples: 0, first: 0 };
  for (let i = 0; i < count; i++) {
    const time = raw.time[i] ?? Number.NaN;
    if (!Number.isFinite(time) || !Number.isFinite(raw.depression[i])) {
      if (unread.samples++ === 0) unread.first = i + 1;
    } else if (time <= latest) {
      if (backwards.samples++ === 0) backwards.first = i + 1;
    } else {
      latest = time;
      kept[size++] = i;
    }
  }
  const problems: TraceProblem[] = [];
  if (unread.samples > 0) problems.push({ kind: "not-numbers", ...unread, of: count });
  if (backwards.samples > 0) problems.push({ kind: "backwards", ...backwards, of: count });
  if (size < LEAST_SAMPLES) problems.push({ kind: "few", samples: size, least: LEAST_SAMPLES });
  const usable = size >= LEAST_SAMPLES && backwards.samples <= MOST_BACKWARDS * count;
  return { samples: size === count ? raw : chosen(raw, kept.subarray(0, size)), problems, usable };
}

function chosen(raw: TraceSamples, indices: Uint32Array): TraceSamples {
  const pick = (values: Float64Array) => Float64Array.from(indices, (at) => values[at] ?? Number.NaN);
  const picked = { time: pick(raw.time), depression: pick(raw.depression) };
  return raw.display === undefined ? picked : { ...picked, display: pick(raw.display) };
}
