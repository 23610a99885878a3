// Reads the cells of a table's column in SI.
import { cellAt, cellStep } from "../model/cells.ts";
import type { Cell, Column, Row, Table } from "../model/model.ts";
import { toSI } from "../quantity/unit.ts";

/** The cells of one column, by row. */
export interface ColumnValues {
  /** The cell itself; `undefined` where the row is too short. */
  readonly cell: (row: Row) => Cell | undefined;
  /** Its value in SI; `undefined` where nothing (readable) was written. */
  readonly value: (row: Row) => number | undefined;
  /** Size of its last written digit in SI; 0 where there is none. */
  readonly step: (row: Row) => number;
}

/** The column of that name; `undefined` where the table has none, or has it without a unit that could be read. */
export function columnValues(table: Table | undefined, name: string): ColumnValues | undefined {
  if (table === undefined) return undefined;
  let columns = known.get(table.columns);
  if (columns === undefined) {
    // Of columns of one name the first.
    columns = new Map(
      table.columns.map((column, at) => [column.name, valuesOf(column, at)] as const).reverse(),
    );
    known.set(table.columns, columns);
  }
  return columns.get(name);
}

/** Tables with the same head share their columns, and every calculation and rule asks for some of them. */
const known = new WeakMap<readonly Column[], ReadonlyMap<string, ColumnValues | undefined>>();

function valuesOf({ unit }: Column, at: number): ColumnValues | undefined {
  if (unit === undefined) return undefined;
  const { factor } = unit;
  return {
    cell: (row) => cellAt(row, at),
    value: (row) => {
      const value = row.values[at];
      return value === undefined || Number.isNaN(value) ? undefined : toSI(value, unit);
    },
    step: (row) => cellStep(row, at) * factor,
  };
}

/** The words of a column of choices; `undefined` where the table has no such column. */
export function columnWords(
  table: Table | undefined,
  name: string,
): ((row: Row) => string | undefined) | undefined {
  const at = table?.columns.findIndex((column) => column.name === name) ?? -1;
  if (at < 0) return undefined;
  return (row) => {
    const text = cellAt(row, at)?.text;
    return text === "-" ? undefined : text;
  };
}
