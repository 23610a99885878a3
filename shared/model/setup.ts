// What a run stands on once every value is settled, each with the place it came from.
import type { Quantity } from "../quantity/quantity.ts";
import type {
  Bench,
  Cam,
  Direction,
  Engine,
  Entry,
  Head,
  Leak,
  Port,
  Run,
  Session,
  StatedAir,
  Stations,
} from "./model.ts";

/** Where a value was stated; `default` where nobody stated it. */
export type Source = "run" | "session" | "port" | "head" | "engine" | "bench" | "default";

/** A settled value and where it came from. */
export interface Settled<T> {
  readonly value: T;
  readonly source: Source;
}

/** Air in SI: K, Pa, 0 to 1, kg/m3. */
export interface AirState {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
  readonly density: number;
  /** Standard uncertainty of the density, kg/m3; 0 for a reference air, which is what it is by definition. */
  readonly densityUncertainty: number;
}

/** A reference air and what to call it. */
export interface NamedAir {
  readonly name: string;
  readonly state: AirState;
}

/**
 * Everything that a run's results stand on. Entities that are not named, or not found, are `undefined`; every set-up has
 * all of these, so that what reads thousands of them is compiled for one shape.
 */
export interface Setup {
  readonly run: Run;
  readonly session: Session | undefined;
  readonly bench: Bench | undefined;
  readonly port: Port | undefined;
  readonly head: Head | undefined;
  readonly engine: Engine | undefined;
  readonly cam: Cam | undefined;
  readonly date: Settled<string> | undefined;
  readonly direction: Settled<Direction>;
  /** The depression that was to be held. */
  readonly target: Settled<Quantity>;
  /** The depression that results are quoted at. */
  readonly quote: Settled<Quantity>;
  /** How far a depression may be off its target, Pa. */
  readonly within: Settled<number>;
  /** The air as it was stated; missing where none was, or none that can be used. */
  readonly statedAir: Settled<StatedAir> | undefined;
  readonly air: Settled<AirState>;
  readonly reference: Settled<NamedAir> | undefined;
  /** Missing where no line speaks of a leak; none is taken off then. */
  readonly leak: Settled<Leak | "none"> | undefined;
  readonly adapter: Settled<Quantity> | undefined;
  readonly entry: Settled<Entry> | undefined;
  readonly stub: Settled<{ readonly bore: Quantity; readonly length?: Quantity } | "none"> | undefined;
  readonly stations: Settled<Stations> | undefined;
  /** Standard uncertainty of a set lift, m. */
  readonly liftSetting: Settled<number>;
  /** What the bench's display takes for the air, if it takes one. */
  readonly benchAir: NamedAir | undefined;
}
