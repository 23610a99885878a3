// What computing a ladder gives: how flow goes with depression at one lift. All in SI.
import type { Ladder, Row } from "./model.ts";
import type { Setup } from "./setup.ts";

/** One step of a ladder that could be computed. */
export interface LadderPoint {
  readonly row: Row;
  /** Pa. */
  readonly depression: number;
  /** Through the port at that depression, m3/s of the entering air. */
  readonly flow: number;
  /** Standard uncertainty of the flow, relative. */
  readonly uncertainty: number;
  /** Motor output, 0 to 1, where the ladder has it. */
  readonly duty: number | undefined;
}

/** Flow = exp(level) · (depression/middle)^exponent. */
export interface PowerLaw {
  readonly exponent: number;
  /** Standard error of the exponent. */
  readonly error: number;
  /** Natural logarithm of the flow at `middle`, m3/s. */
  readonly level: number;
  /** Pa. */
  readonly middle: number;
}

/** Two power laws that meet. */
export interface Kink {
  /** Pa, where they meet. */
  readonly depression: number;
  /** Exponents below and above it. */
  readonly below: number;
  readonly above: number;
  /** Natural logarithm of the flow where they meet, m3/s. */
  readonly level: number;
  /** Chance that one law with such scatter looks as kinked as this anywhere; at most. */
  readonly chance: number;
}

/**
 * What a ladder speaks of: `as-expected` between the square root and an ideal nozzle; `steep` above (a fine gap that leaks);
 * `flat` below; `kinked` where two laws are needed.
 */
export type LadderVerdict = "as-expected" | "steep" | "flat" | "kinked";

/** A ladder, computed. */
export interface LadderResult {
  readonly ladder: Ladder;
  readonly setup: Setup;
  readonly points: readonly LadderPoint[];
  /** Missing with fewer than three points, or with one depression alone. */
  readonly law: PowerLaw | undefined;
  /** Exponent of an ideal nozzle over the same depressions, where air thins out on its way. */
  readonly nozzle: number | undefined;
  /** How far an exponent may be off by chance, at 95 %. */
  readonly allowance: number;
  readonly kink: Kink | undefined;
  readonly verdict: LadderVerdict | undefined;
}
