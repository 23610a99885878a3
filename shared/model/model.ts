// What a file means: benches, heads, ports, sessions and runs, with every value in SI beside its written form.
import type { Quantity } from "../quantity/quantity.ts";
import type { Unit } from "../quantity/unit.ts";
import type { Span } from "../text/span.ts";

/** Where an entity was written; spans count from its block's first line. Calculations never look inside. */
export interface Origin {
  readonly heading: Span;
  /** The id in the heading, or the heading where it has none. */
  readonly name: Span;
  /** The first line of each keyword that the block states. */
  readonly lines: ReadonlyMap<string, Span>;
}

/** A name used for something that stands elsewhere. */
export interface Reference {
  readonly id: string;
  readonly span: Span;
}

export type Side = "intake" | "exhaust";
export type Direction = "draws" | "blows";
export type Entry = "bare" | "clay" | "radiused" | "manifold";
export type NamedKind = "bench" | "plate" | "engine" | "head" | "port" | "cam" | "run";

interface Named {
  readonly id: string;
  readonly title?: string;
  readonly origin: Origin;
}

// --- readings -----------------------------------------------------------------------------------------

/** One cell of a row. `value` is in the column's unit and NaN where nothing (readable) was written. */
export interface Cell {
  readonly text: string;
  readonly value: number;
  /** Size of the last written digit, in the column's unit; 0 for a fraction. */
  readonly step: number;
  readonly from: number;
  readonly to: number;
}

export interface Column {
  readonly name: string;
  /** Missing where the column has no dimension, or where its unit could not be read. */
  readonly unit?: Unit;
  readonly span: Span;
}

/**
 * The cells of a line as numbers alone, since a record is mostly that: `values` in the columns' units, NaN where nothing
 * readable was written, and where each cell begins and ends in `text`: from, to, from, to … `cells.ts` makes cells of them.
 */
export interface Cells {
  readonly text: string;
  readonly values: readonly number[];
  readonly bounds: readonly number[];
}

/** One reading. */
export interface Row extends Cells {
  /** Counts from the block's first line. */
  readonly line: number;
  /** Where what the row says ends. */
  readonly to: number;
  readonly remark: string | undefined;
  /** Why the row is void, "" where no reason was given; `undefined` for a row that counts. */
  readonly void: string | undefined;
}

export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

// --- things that stand in the shop ---------------------------------------------------------------------

/** The air of the day, or a bench's or a result's reference air, written out. */
export interface StatedAir {
  readonly temperature?: Quantity;
  readonly pressure?: Quantity;
  readonly humidity?: Quantity;
  readonly dewPoint?: Quantity;
  readonly wetBulb?: Quantity;
  readonly altimeter?: Quantity;
  readonly elevation?: Quantity;
}

/** A named reference air, or one written out. */
export type AirName = { readonly name: string } | StatedAir;

/** What a bench's display shows, and under which conditions its numbers are true. */
export interface Shows {
  readonly kind: "flow" | "meter-flow" | "percent" | "drop" | "signal";
  /** The depression to which the display has already scaled its flow. */
  readonly at?: Quantity;
  readonly in?: AirName;
}

export interface Range {
  readonly name: string;
  readonly flow: Quantity;
  readonly depression: Quantity;
  readonly span: Span;
}

export interface Element {
  readonly kind:
    | "orifice"
    | "isa-nozzle"
    | "long-radius-nozzle"
    | "venturi-cast"
    | "venturi-machined"
    | "venturi-welded";
  readonly bore: Quantity;
  readonly pipe?: Quantity;
  readonly taps?: "corner" | "flange" | "d-d2";
  readonly coefficient?: number;
}

export interface Bench extends Named {
  readonly kind: "bench";
  readonly shows?: Shows;
  readonly ranges: readonly Range[];
  readonly element?: Element;
  readonly meter?: "upstream" | "downstream" | "ambient";
  /** One standard deviation of one reading, relative. */
  readonly repeat?: Quantity;
  /** Of the flow scale, relative, expanded (k = 2). */
  readonly uncertainty?: Quantity;
  readonly liftSetting?: Quantity;
  readonly settle?: Quantity;
  readonly quick?: Quantity;
  readonly within?: Quantity;
  readonly swirlMeter?: { readonly kind: "impulse" | "paddle"; readonly bore?: Quantity };
  readonly motors?: number;
  /** Calibration of a bench that shows a signal: columns `signal` and `flow`. */
  readonly table?: Table;
}

export interface Plate extends Named {
  readonly kind: "plate";
  readonly diameter?: Quantity;
  readonly flow?: { readonly flow: Quantity; readonly depression: Quantity; readonly in?: AirName };
  readonly uncertainty?: Quantity;
  readonly due?: string;
}

export interface Engine extends Named {
  readonly kind: "engine";
  readonly bore?: Quantity;
  readonly stroke?: Quantity;
  readonly cylinders?: number;
  readonly speeds: readonly Quantity[];
  readonly cams: readonly Reference[];
  readonly efficiency?: Quantity;
}

export interface Head extends Named {
  readonly kind: "head";
  readonly engine?: Reference;
  readonly casting?: string;
}

export interface Section {
  readonly name: string;
  readonly area: Quantity;
}

export interface Port extends Named {
  readonly kind: "port";
  readonly of?: Reference;
  readonly side?: Side;
  /** Diameter of the valve head. */
  readonly valve?: Quantity;
  readonly valves?: number;
  /** Angle from the plane across the stem; width of the seat's face. */
  readonly seat?: { readonly angle: Quantity; readonly width?: Quantity };
  readonly throat?: Quantity;
  readonly stem?: Quantity;
  readonly sections: readonly Section[];
  readonly volume?: Quantity;
  readonly length?: Quantity;
}

export type CamLaw = "harmonic" | "cycloidal" | "p345" | "p4567";

export interface Cam extends Named {
  readonly kind: "cam";
  readonly side?: Side;
  readonly lift?: Quantity;
  readonly duration?: Quantity;
  readonly centre?: Quantity;
  readonly law?: CamLaw;
  readonly rocker?: number;
  readonly lash?: Quantity;
  /** A measured cam: columns `angle` and `lift`. */
  readonly table?: Table;
}

// --- what happened at the bench ------------------------------------------------------------------------

export interface Leak {
  readonly flow: Quantity;
  readonly depression: Quantity;
  readonly exponent?: number;
}

export interface Stations {
  readonly first: Quantity;
  readonly last: Quantity;
  readonly step: Quantity;
}

/** The lines that a session states for all its runs and that a run may override. */
export interface Conditions {
  readonly bench?: Reference;
  readonly port?: Reference;
  readonly target?: Quantity;
  readonly quote?: Quantity;
  readonly within?: Quantity;
  readonly reference?: AirName;
  readonly air?: StatedAir;
  readonly leak?: Leak | "none";
  readonly adapter?: Quantity;
  readonly entry?: Entry;
  readonly stub?: { readonly bore: Quantity; readonly length?: Quantity } | "none";
  readonly stations?: Stations;
}

export interface Session extends Conditions {
  readonly kind: "session";
  readonly date?: string;
  readonly title?: string;
  readonly operator?: string;
  readonly notes: readonly string[];
  readonly origin: Origin;
}

export interface Expectation {
  readonly flow: Quantity;
  readonly lift: Quantity;
  readonly within: Quantity;
  readonly span: Span;
}

export interface Run extends Named, Conditions {
  readonly kind: "run";
  readonly cylinder?: number;
  readonly stage?: string;
  readonly baseline?: Reference;
  readonly direction?: Direction;
  readonly date?: string;
  readonly expectations: readonly Expectation[];
  readonly notes: readonly string[];
  readonly table?: Table;
}

export interface Channel {
  readonly column: string;
  readonly unit?: Unit;
}

/** The approach to the depression at one lift, inline or in a CSV file. */
export interface Trace {
  readonly kind: "trace";
  readonly lift?: Quantity;
  readonly of?: Reference;
  readonly log?: {
    readonly path: string;
    readonly time?: Channel;
    readonly depression?: Channel;
    readonly flow?: Channel;
  };
  readonly table?: Table;
  readonly origin: Origin;
}

/** One lift at several depressions. */
export interface Ladder {
  readonly kind: "ladder";
  readonly lift?: Quantity;
  readonly of?: Reference;
  readonly table?: Table;
  readonly origin: Origin;
}

/** Local air speeds over a section of the port. */
export interface VelocityMap {
  readonly kind: "map";
  readonly title?: string;
  readonly of?: Reference;
  readonly lift?: Quantity;
  readonly depression?: Quantity;
  readonly table?: Table;
  readonly origin: Origin;
}

/** A reading of a certified plate in this session. */
export interface PlateCheck {
  readonly kind: "plate-check";
  readonly plate?: Reference;
  readonly table?: Table;
  readonly origin: Origin;
}

export interface Entities {
  readonly bench: Bench;
  readonly plate: Plate;
  readonly engine: Engine;
  readonly head: Head;
  readonly port: Port;
  readonly cam: Cam;
  readonly session: Session;
  readonly run: Run;
  readonly trace: Trace;
  readonly ladder: Ladder;
  readonly map: VelocityMap;
  readonly "plate-check": PlateCheck;
}

export type BlockKind = keyof Entities;
export type Entity = Entities[BlockKind];

/** An entity while it is being read. */
export type Draft<T> = { -readonly [K in keyof T]: T[K] };
