// What computing a run gives: every row, every averaged station, what falls back, and the summary. All in SI.
import type { Plate, Row } from "./model.ts";
import type { Setup } from "./setup.ts";

/** Rows taken while the lift goes up, or comes down again. */
export type Branch = "rising" | "falling";

/** The flow of one row on its way from the display to the result, m3/s of the entering air unless said otherwise. */
export interface Flow {
  /** At the row's own depression, before the leak is taken off. */
  readonly measured: number;
  /** Leak at the row's own depression. */
  readonly leak: number;
  /** Through the port, at the row's own depression. */
  readonly port: number;
  /** At the quoted depression and in the reference air. */
  readonly corrected: number;
}

/** A value that stands near a known factor of what the stations around it lead to. */
export interface Slip {
  readonly column: "flow" | "lift";
  /** What was written, divided by what was expected. */
  readonly factor: number;
  /** The nearest of the known factors. */
  readonly near: number;
  /** What the stations around lead to, SI. */
  readonly expected: number;
}

/** A flow that the geometry cannot pass. */
export interface Impossible {
  readonly area: "gap" | "curtain" | "throat";
  /** Effective and geometric area, m2. */
  readonly effective: number;
  readonly geometric: number;
  /** Expanded relative uncertainty of the flow when it was judged, the row among the others. */
  readonly uncertainty: number;
}

/**
 * The rows of a run as columns of plain numbers, SI, NaN where there is none: for those who look at all rows of all runs. An
 * array of nothing but numbers is held as it is, and every other number is an object of its own.
 */
export interface RowNumbers {
  readonly lift: readonly number[];
  readonly depression: readonly number[];
  /** Of the flow, as in `Flow`. */
  readonly measured: readonly number[];
  readonly leak: readonly number[];
  readonly corrected: readonly number[];
  readonly effectiveArea: readonly number[];
}

/** One row, computed. What could not be read or computed is `undefined`; every row has all fields. */
export interface RowResult {
  readonly row: Row;
  readonly lift: number | undefined;
  readonly depression: number | undefined;
  readonly flow: Flow | undefined;
  /** kg/s, of the row itself. */
  readonly massFlow: number | undefined;
  /** m2, of the row itself. */
  readonly effectiveArea: number | undefined;
  /** Variance of the corrected flow from the written numbers and the air, relative. */
  readonly variance: number;
  readonly branch: Branch | undefined;
  readonly slip: Slip | undefined;
  readonly impossible: Impossible | undefined;
  /** Whether it may take part in means: not void, complete, and neither a slip nor impossible. */
  readonly isUsable: boolean;
  /** Expanded uncertainty (k = 2) of the corrected flow by itself, relative. */
  readonly uncertainty: number | undefined;
}

/** The rows of one lift and branch, averaged. */
export interface Station {
  readonly lift: number;
  readonly flow: number;
  readonly rows: readonly RowResult[];
  /** Change of corrected flow with lift, m3/s per m. */
  readonly slope: number;
  /** Expanded uncertainty (k = 2) of the mean, relative. */
  readonly uncertainty: number;
}

/** How well a bench repeats, and how well that itself is known. */
export interface Repeatability {
  /** One standard deviation of one reading, relative. */
  readonly deviation: number;
  readonly source: "bench" | "pooled" | "default";
  /** Of a pooled deviation. */
  readonly degreesOfFreedom?: number;
}

/** Flow that falls while the valve still opens. */
export interface FallBack {
  readonly onset: Station;
  readonly deepest: Station;
  /** The first later station that reaches the onset's flow again. */
  readonly recovery?: Station;
  /** The station up to which the flow stays below the onset's. */
  readonly last: Station;
  /** Drop from onset to deepest station, relative to the onset. */
  readonly depth: number;
  /** What a flat curve of `stations` stations exceeds by chance in 5 % of sweeps at the deepest station, relative. */
  readonly chance: number;
  readonly stations: number;
  /** Resolved if any of its stations is: of unequally repeated ones that need not be the deepest. */
  readonly resolved: boolean;
  /** The station whose drop stands furthest beyond chance, with both relative to the onset. */
  readonly clearest: { readonly station: Station; readonly drop: number; readonly chance: number };
  /** Readings in all at each of the two stations that would resolve an unresolved drop. */
  readonly readingsNeeded: number;
}

/** The flow averaged over the valve event of a cam, or why there is no such average. */
export type EventMean =
  | {
      readonly flow: number;
      /** Lift of the first station, m. Below it the curve is the straight line from nothing at lift 0. */
      readonly first: number;
      /** Share of the open valve's time that is spent below the first station. */
      readonly below: number;
    }
  | {
      readonly missing: "no-event" | "one-station";
    }
  /** The cam lifts to `cam`, the last station is at `last`, m. */
  | { readonly missing: "short-of-cam"; readonly cam: number; readonly last: number }
  /** The first station is at `first`; a straight line from lift 0 holds up to `limit`, m. */
  | { readonly missing: "begins-too-high"; readonly first: number; readonly limit: number };

export interface Summary {
  readonly peak?: { readonly lift: number; readonly flow: number };
  /** Over the lifts from the first station to the last, m and m3/s; missing with fewer than two stations. */
  readonly mean?: { readonly flow: number; readonly from: number; readonly to: number };
  /** Means of the three equal parts of the lift range. */
  readonly bands?: { readonly low: number; readonly middle: number; readonly high: number };
  /** Over the cam event; missing without a cam. */
  readonly event?: EventMean;
  /** Time that the whole run took, s; missing where nothing was timed. */
  readonly time?: number;
}

/** A run, computed. */
export interface RunResult {
  readonly setup: Setup;
  /** The rows of the run's table. */
  readonly written: readonly Row[];
  readonly rows: readonly RowResult[];
  readonly numbers: RowNumbers;
  /** What stands out, by the row's place among `rows`; nothing in most runs. */
  readonly slips: ReadonlyMap<number, Slip>;
  readonly impossible: ReadonlyMap<number, Impossible>;
  /** The places of the usable rows, in the order in which they were taken. */
  readonly usable: readonly number[];
  /** Averaged stations of each branch, by rising lift. */
  readonly rising: readonly Station[];
  readonly falling: readonly Station[];
  /** Those of both that average more than one reading, rising ones first. */
  readonly repeated: readonly Station[];
  readonly repeatability: Repeatability;
  readonly fallBacks: readonly FallBack[];
}

/** Readings of a check plate against what its certificate says. */
export interface PlateResult {
  /** As that of a run, but quoted at the certificate's depression and in its air. */
  readonly setup: Setup;
  /** Missing where it is not named or not found. */
  readonly plate?: Plate;
  readonly rows: readonly RowResult[];
  /** Missing where the certificate or the readings do not say enough. */
  readonly comparison?: PlateComparison;
}

/** Flows m3/s at the certificate's depression and in its air; shares of the certified flow. */
export interface PlateComparison {
  readonly certified: number;
  /** Mean of the readings that count. */
  readonly flow: number;
  readonly readings: number;
  /** `flow / certified - 1`. */
  readonly difference: number;
  /** Expanded uncertainty (k = 2) of the difference; missing where the plate does not state its own. */
  readonly uncertainty?: number;
  /** Normalised error, difference over its expanded uncertainty: beyond 1 the two do not agree. */
  readonly en?: number;
}
