// Makes cells of a row that holds numbers alone.
import { readNumber } from "../quantity/number.ts";
import type { Cell, Cells } from "./model.ts";

/** How many cells a row has. */
export function cellCount(row: Cells): number {
  return row.values.length;
}

/** A cell of a row; `undefined` where the row is too short. */
export function cellAt(row: Cells, index: number): Cell | undefined {
  const value = row.values[index];
  const from = row.bounds[2 * index];
  const to = row.bounds[2 * index + 1];
  if (value === undefined || from === undefined || to === undefined) return undefined;
  return { text: row.text.slice(from, to), value, step: cellStep(row, index), from, to };
}

/** All cells of a row. */
export function cellsOf(row: Cells): readonly Cell[] {
  return row.values.flatMap((_, index) => cellAt(row, index) ?? []);
}

/** Size of the last written digit of a cell, in its column's unit; 0 for a fraction and for what is no number. */
export function cellStep(row: Cells, index: number): number {
  const from = row.bounds[2 * index];
  const to = row.bounds[2 * index + 1];
  if (from === undefined || to === undefined) return 0;
  const read = readNumber(row.text.slice(from, to));
  return "step" in read ? read.step : 0;
}

/** Where the first cell of a row begins. */
export function startOf(row: Cells): number {
  return row.bounds[0] ?? 0;
}
