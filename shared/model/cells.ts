// Makes cells of a row that holds numbers alone.
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
  if (from === undefined || to === undefined || Number.isNaN(row.values[index])) return 0;
  // Looked for by hand, since every reading is asked: what has a value is a decimal or a fraction, and nothing else.
  for (let at = to - 1; at >= from; at--) {
    const code = row.text.charCodeAt(at);
    if (code === POINT) return STEPS[to - 1 - at] ?? 0;
    if (code === SLASH) return 0;
  }
  return 1;
}

/** By the number of decimals. */
const STEPS: readonly number[] = Array.from({ length: 31 }, (_, decimals) => 1 / 10 ** decimals);
const POINT = 46;
const SLASH = 47;

/** Where the first cell of a row begins. */
export function startOf(row: Cells): number {
  return row.bounds[0] ?? 0;
}
