// Reads the cells of a table's column in SI.
import { cellAt, cellStep } from "../model/cells.ts";
import type { Cell, Column, Row, Table } from "../model/model.ts";
import { toSI, type Unit } from "../quantity/unit.ts";

/** The cells of one column, by row. */
export class ColumnValues {
  readonly #at: number;
  readonly #unit: Unit;

  constructor(at: number, unit: Unit) {
    this.#at = at;
    this.#unit = unit;
  }

  /** The cell itself; `undefined` where the row is too short. */
  cell(row: Row): Cell | undefined {
    return cellAt(row, this.#at);
  }

  /** Its value in SI; NaN where nothing (readable) was written. */
  number(row: Row): number {
    return toSI(row.values[this.#at] ?? Number.NaN, this.#unit);
  }

  /** The same, `undefined` where nothing (readable) was written. */
  value(row: Row): number | undefined {
    const value = this.number(row);
    return Number.isNaN(value) ? undefined : value;
  }

  /** Size of its last written digit in SI; 0 where there is none. */
  step(row: Row): number {
    return cellStep(row, this.#at) * this.#unit.factor;
  }
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
  return unit && new ColumnValues(at, unit);
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
