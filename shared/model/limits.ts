// The limits that findings judge by and that have no published source; a workspace can set them in headnote.json.

/** Common practice, no published source. Ratios are shares of one, pressures Pa. */
export interface Limits {
  /** Leak as a share of a reading from which it is worth a hint, and a warning. */
  readonly leakHint: number;
  readonly leakWarning: number;
  /** How far the adapter may be off the engine's bore. */
  readonly adapter: number;
  /** Cd on the curtain below L/D 0.3. */
  readonly cdLowest: number;
  readonly cdHighest: number;
  /** How far a barometer may stand above the standard atmosphere of its elevation. */
  readonly barometer: number;
  /** How far apart the cylinders of one stage may be. */
  readonly cylinders: number;
  /** Ratio of the quoted to a row's depression, and its inverse. */
  readonly scaling: number;
}

export const DEFAULT_LIMITS: Limits = {
  leakHint: 0.05,
  leakWarning: 0.1,
  adapter: 0.05,
  cdLowest: 0.2,
  cdHighest: 0.85,
  // 1.2 inHg
  barometer: 4063.67,
  cylinders: 0.02,
  scaling: 1.5,
};
