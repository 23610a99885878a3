// What all simulated sweeps have in common.
import type { SimulatedReading } from "../kit/simulator/sweep.ts";

const IN = 0.0254;
const IN_H2O = 249.08891;

/** 28 inH2O, and the band of 0.2 inH2O that readings are taken in, Pa. */
export const TARGET = 28 * IN_H2O;
export const BAND = 0.2 * IN_H2O;
export const DENSITY = 1.18;
/** 0.100 to 0.600 in by 0.050 in. */
export const LIFTS: readonly number[] = Array.from({ length: 11 }, (_, index) => (0.1 + 0.05 * index) * IN);
/** Runs in one record: a record has its fixed costs, and many runs share them. */
export const RUNS_A_RECORD = 100;

/** A reading of a port whose flow is the same at every lift: held exactly, settled long ago. */
export function flatReading(station: number, flow: number): SimulatedReading {
  return {
    lift: (0.1 + 0.02 * station) * IN,
    depression: TARGET,
    flow,
    settle: 1,
    read: 4,
    isAttached: true,
  };
}
