// The way from a display's number to corrected flow, as functions of the numbers that carry an uncertainty.
import type { Bench } from "../model/model.ts";
import type { Setup } from "../model/setup.ts";
import { findMeter } from "./meters/index.ts";
import type { Meter, ReadDisplay } from "./meters/meter.ts";

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
 * The chain of a run; `undefined` for a bench that is missing, whose display gives no results, or whose numbers are true
 * for an air that is not known.
 */
export function flowChain(setup: Setup): FlowChain | undefined {
  const { bench } = setup;
  const meter = bench?.shows && findMeter(bench.shows.kind);
  if (bench === undefined || meter === undefined) return undefined;
  if (bench.shows?.in !== undefined && setup.benchAir === undefined) return undefined;
  const read = meter.reader(bench);
  const readLeak = meter.leakReader(bench);
  return read && readLeak && new FlowChain(setup, bench, meter, read, readLeak);
}

/**
 * A run's way from display to result: display → volume flow of the entering air at the row's own depression → less the
 * leak, which follows `(dp/dp_leak)^n` (ASTM E779) → quoted depression by the square root law → reference air by
 * `sqrt(rho/rho_ref)` (the same port at the same depression passes more volume of thinner air). All numbers are SI, the
 * display's and the leak's as the display shows them. NaN where the depression is not above zero, or the display's number
 * is outside what the bench knows. A class, since every run has one and its code is compiled once for all of them.
 */
export class FlowChain {
  /** The column of the display's number. */
  readonly column: string;
  readonly #read: ReadDisplay;
  readonly #readLeak: ReadDisplay;
  readonly #quote: number;
  /** Densities, kg/m3: of the reference air, and of what display and leak take for the air; missing where there is none. */
  readonly #reference: number | undefined;
  readonly #benchDensity: number | undefined;
  readonly #leakDensity: number | undefined;
  readonly #leakDepression: number;
  readonly #leakExponent: number;

  constructor(setup: Setup, bench: Bench, meter: Meter, read: ReadDisplay, readLeak: ReadDisplay) {
    const leak = setup.leak?.value;
    const stated = leak === "none" ? undefined : leak;
    this.column = meter.column;
    this.#read = read;
    this.#readLeak = readLeak;
    this.#quote = setup.quote.value.value;
    this.#reference = setup.reference?.value.state.density;
    this.#benchDensity = setup.benchAir?.state.density;
    // A leak on a signal display is written as a flow of the room's own air.
    this.#leakDensity = bench.shows?.kind === "signal" ? undefined : this.#benchDensity;
    this.#leakDepression = stated?.depression.value ?? 0;
    this.#leakExponent = stated?.exponent ?? 0.5;
  }

  /** What the display measures at a row's own depression, the leak in it, m3/s. */
  measured(display: number, depression: number, density: number, range: string | undefined): number {
    if (!(depression > 0)) return Number.NaN;
    const shown = this.#read(display, depression, range) ?? Number.NaN;
    return this.#benchDensity === undefined ? shown : shown * Math.sqrt(this.#benchDensity / density);
  }

  /** The leak at a row's own depression, m3/s. */
  leak(leak: number, depression: number, density: number, range: string | undefined): number {
    if (leak === 0) return 0;
    if (!(this.#leakDepression > 0)) return Number.NaN;
    const atOwn = this.#readLeak(leak, this.#leakDepression, range) ?? Number.NaN;
    const ratio = depression / this.#leakDepression;
    const scale = this.#leakExponent === 0.5 ? Math.sqrt(ratio) : ratio ** this.#leakExponent;
    return atOwn * scale * (this.#leakDensity === undefined ? 1 : Math.sqrt(this.#leakDensity / density));
  }

  /** What the port passed, at the quoted depression and in the reference air, m3/s. */
  corrected(measured: number, leak: number, depression: number, density: number): number {
    const quoted = (measured - leak) * Math.sqrt(this.#quote / depression);
    return this.#reference === undefined ? quoted : quoted * Math.sqrt(density / this.#reference);
  }

  /** The whole way at once: corrected flow, m3/s. */
  through({ display, depression, leak, density, range }: ChainInput): number {
    const measured = this.measured(display, depression, density, range);
    return this.corrected(measured, this.leak(leak, depression, density, range), depression, density);
  }
}

/** The number of a leak that is stated, as the display showed it; 0 where none is. */
export function leakNumber(setup: Setup): number {
  const leak = setup.leak?.value;
  return leak === undefined || leak === "none" ? 0 : leak.flow.value;
}
