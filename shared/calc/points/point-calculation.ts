// The shape of a calculation for one reading: all that tables, machine output and hover know about it.
import type { RowResult } from "../../model/result.ts";
import type { Setup } from "../../model/setup.ts";
import type { Dimension } from "../../quantity/dimension.ts";

/** What a calculation may look at: a computed row, and what its run stands on. */
export interface PointContext {
  readonly result: RowResult;
  readonly setup: Setup;
}

/** A number in SI, or one for each name (a section of the port); `undefined` where it cannot be computed. */
export type PointValue = number | undefined | Readonly<Record<string, number | undefined>>;

/** One calculation for one reading. Adding one is its file and a line in the list. */
export interface PointCalculation {
  /** Key in machine output, camelCase; a dot puts it into a group: `cd.curtain`. */
  readonly id: string;
  /** Head in tables. A calculation that gives a record has the name of each value after it. */
  readonly title: string;
  /** What the values measure; `none` for bare numbers. */
  readonly dimension: Dimension | "none";
  /** Whether it gives one value, or one for each of several names. */
  readonly gives: "value" | "record";
  /** Whether text tables have a column of it; of a record, which of its names do. */
  readonly inTable: boolean | ((name: string, setup: Setup) => boolean);
  /** One sentence for hover and reference. */
  readonly doc: string;
  /** The formula and where it comes from. */
  readonly source: string;
  readonly compute: (context: PointContext) => PointValue;
}
