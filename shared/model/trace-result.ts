// What computing a trace gives: the approach to the depression, the steady window, and where the port let go. All in SI.
import type { Trace } from "./model.ts";
import type { Setup } from "./setup.ts";

/** The samples of a trace in the order of time, all of one length. */
export interface TraceSamples {
  /** s, since the valve was opened. */
  readonly time: Float64Array;
  /** Pa. */
  readonly depression: Float64Array;
  /** The display's number as its column gives it, NaN where there is none; missing where the trace has no such column. */
  readonly display?: Float64Array;
}

/** Why a trace, or some of its samples, cannot be used. */
export type TraceProblem =
  /** The record names a log and has rows too. */
  | { readonly kind: "two-sources" }
  | { readonly kind: "unreadable"; readonly path: string; readonly problem: string }
  | { readonly kind: "outside"; readonly path: string }
  /** The log has no such column. */
  | { readonly kind: "no-column"; readonly column: string; readonly columns: readonly string[] }
  /** The log itself says another unit than the record. */
  | {
      readonly kind: "other-unit";
      readonly column: string;
      readonly found: string;
      readonly stated: string;
    }
  | { readonly kind: "few"; readonly samples: number; readonly least: number }
  | { readonly kind: "backwards"; readonly samples: number; readonly of: number; readonly first: number }
  | { readonly kind: "not-numbers"; readonly samples: number; readonly of: number; readonly first: number }
  | { readonly kind: "negative" }
  /** The depression goes far beyond the target. */
  | { readonly kind: "far-beyond"; readonly highest: number };

/** Stretches without samples. */
export interface TraceGaps {
  readonly count: number;
  /** s, of all of them. */
  readonly missing: number;
  /** The longest: the last sample before it and the first behind it, s. */
  readonly from: number;
  readonly to: number;
}

/** When the depression had entered the band around the target and stayed. */
export interface Settling {
  /** s; one sample after the last one outside. */
  readonly time: number;
  /** s between that sample and the one before it: the time is known no better. */
  readonly step: number;
}

/** A number of a fit and its standard error. */
export interface Fitted {
  readonly value: number;
  readonly error: number;
}

/** The depression after opening the valve as the response to a step. */
export interface Approach {
  readonly order: 1 | 2;
  /** s, before anything moves. */
  readonly deadTime: Fitted;
  /** Pa, before the approach and after it. */
  readonly start: Fitted;
  readonly end: Fitted;
  /** s; of the first order. */
  readonly timeConstant?: Fitted;
  /** rad/s and 1; of the second order. */
  readonly naturalFrequency?: Fitted;
  readonly damping?: Fitted;
  /** Standard deviation of what the fit leaves over, Pa. */
  readonly scatter: number;
}

/** A mean over samples that may hang together. */
export interface SteadyMean {
  readonly mean: number;
  /** Standard deviation of one sample. */
  readonly scatter: number;
  /** How many independent samples the mean is worth. */
  readonly effective: number;
  /** Standard error of the mean. */
  readonly error: number;
}

/** The stretch in which neither depression nor apparent area has a trend. */
export interface SteadyWindow {
  /** s. */
  readonly from: number;
  readonly to: number;
  readonly samples: number;
  readonly depression: SteadyMean;
  /** Of corrected flow, m3/s. */
  readonly flow?: SteadyMean;
}

/** A step of the apparent area. */
export interface AreaStep {
  /** Flow lets go of a wall, or lies against it again. */
  readonly kind: "let-go" | "re-attached";
  /** s; the first sample after the step. */
  readonly time: number;
  /** Pa, just before it. */
  readonly depression: number;
  /** What the depression did before it. */
  readonly phase: "rising" | "holding" | "falling";
  /** Relative to the area before, always positive; and its standard error. */
  readonly size: number;
  readonly error: number;
  /** Corrected flow around it, m3/s. */
  readonly before: number;
  readonly after: number;
  /** Chance that scatter alone makes a step as clear as this anywhere in the trace; at most. */
  readonly chance: number;
}

/** A trace, computed. What could not be computed is `undefined`. */
export interface TraceResult {
  readonly trace: Trace;
  readonly setup: Setup;
  /** Without those that cannot be used. */
  readonly samples: TraceSamples;
  /** Corrected flow of every sample, m3/s, NaN where there is none; missing where the trace knows no flow. */
  readonly flow?: Float64Array;
  /** m2 a m3/s of corrected flow: the apparent area. */
  readonly areaFactor: number;
  readonly problems: readonly TraceProblem[];
  /** The usual time between two samples, s. */
  readonly interval: number;
  readonly gaps: TraceGaps | undefined;
  readonly settling: Settling | undefined;
  /** Pa above the steady mean, where it stands out of the scatter. */
  readonly overshoot: number | undefined;
  readonly approach: Approach | undefined;
  readonly steady: SteadyWindow | undefined;
  readonly steps: readonly AreaStep[];
}
