// The way from a display's number to corrected flow, as one function of the numbers that carry an uncertainty.

import type { Flow } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { findMeter } from "./meters/index.ts";

/** A run's way from display to result; all numbers SI, the display's and the leak's as the display shows them. */
export interface FlowChain {
  /**
   * A row's flow; `undefined` where the depression is not above zero, the display's number is outside what the bench
   * knows, or the result is not finite.
   */
  readonly flow: (input: ChainInput) => Flow | undefined;
  /** Corrected flow alone, m3/s; NaN where there is none. */
  readonly corrected: (input: ChainInput) => number;
}

/** What one row puts in; each number carries an uncertainty of its own. */
export interface ChainInput {
  display: number;
  /** Pa. */
  depression: number;
  leak: number;
  /** Density of the ambient air, kg/m3. */
  density: number;
  range: string | undefined;
}

/**
 * The chain of a run: display → volume flow of the entering air at the row's own depression → less the leak, which
 * follows `(dp/dp_leak)^n` (ASTM E779) → quoted depression by the square root law → reference air by
 * `sqrt(rho/rho_ref)` (the same port at the same depression passes more volume of thinner air). `undefined` for a bench
 * that is missing, whose display gives no results, or whose numbers are true for an air that is not known.
 */
export function flowChain(setup: Setup): FlowChain | undefined {
  const { bench } = setup;
  const meter = bench?.shows && findMeter(bench.shows.kind);
  if (bench === undefined || meter === undefined) return undefined;
  if (bench.shows?.in !== undefined && setup.benchAir === undefined) return undefined;
  const read = meter.reader(bench);
  const readLeak = meter.leakReader(bench);
  if (read === undefined || readLeak === undefined) return undefined;

  const quote = setup.quote.value.value;
  const reference = setup.reference?.value.state.density;
  const benchDensity = setup.benchAir?.state.density;
  // A leak on a signal display is written as a flow of the room's own air.
  const leakDensity = bench.shows?.kind === "signal" ? undefined : benchDensity;
  const stated = setup.leak?.value;
  const leakDepression = stated === undefined || stated === "none" ? 0 : stated.depression.value;
  const exponent = stated === undefined || stated === "none" ? 0.5 : (stated.exponent ?? 0.5);

  const measuredFlow = ({ display, depression, density, range }: ChainInput): number => {
    if (!(depression > 0)) return Number.NaN;
    const shown = read(display, depression, range) ?? Number.NaN;
    return benchDensity === undefined ? shown : shown * Math.sqrt(benchDensity / density);
  };
  const leakFlow = ({ leak, depression, density, range }: ChainInput): number => {
    if (leak === 0) return 0;
    if (!(leakDepression > 0)) return Number.NaN;
    const atOwn = readLeak(leak, leakDepression, range) ?? Number.NaN;
    const ratio = depression / leakDepression;
    const scale = exponent === 0.5 ? Math.sqrt(ratio) : ratio ** exponent;
    return atOwn * scale * (leakDensity === undefined ? 1 : Math.sqrt(leakDensity / density));
  };
  const correct = (port: number, { depression, density }: ChainInput): number => {
    const quoted = port * Math.sqrt(quote / depression);
    return reference === undefined ? quoted : quoted * Math.sqrt(density / reference);
  };
  return {
    flow: (input) => {
      const measured = measuredFlow(input);
      const leak = leakFlow(input);
      const port = measured - leak;
      const corrected = correct(port, input);
      return Number.isFinite(corrected) ? { measured, leak, port, corrected } : undefined;
    },
    corrected: (input) => correct(measuredFlow(input) - leakFlow(input), input),
  };
}

/** The number of a leak that is stated, as the display showed it; 0 where none is. */
export function leakNumber(setup: Setup): number {
  const leak = setup.leak?.value;
  return leak === undefined || leak === "none" ? 0 : leak.flow.value;
}
