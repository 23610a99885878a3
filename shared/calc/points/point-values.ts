// Runs all calculations on one reading and gives their values as one flat list.
import type { Dimension } from "../../quantity/dimension.ts";
import { POINT_CALCULATIONS } from "./index.ts";
import type { PointContext } from "./point-calculation.ts";

/** One computed value. Two readings of one run give the same values in the same order. */
export interface NamedValue {
  /** Keys in machine output from the outside in: `["cd", "curtain"]`, `["velocity", "pinch"]`. */
  readonly path: readonly string[];
  readonly title: string;
  readonly dimension: Dimension | "none";
  readonly inTable: boolean;
  /** SI. */
  readonly value: number | undefined;
}

export function pointValues(context: PointContext): readonly NamedValue[] {
  return POINT_CALCULATIONS.flatMap((calculation): NamedValue[] => {
    const { title, dimension, inTable } = calculation;
    const path = calculation.id.split(".");
    const isShown = (name: string) => (typeof inTable === "boolean" ? inTable : inTable(name, context.setup));
    const value = calculation.compute(context);
    if (typeof value !== "object") return [{ path, title, dimension, inTable: isShown(""), value }];
    return Object.entries(value).map(([name, one]) => ({
      path: [...path, name],
      title: `${title} ${name}`,
      dimension,
      inTable: isShown(name),
      value: one,
    }));
  });
}
