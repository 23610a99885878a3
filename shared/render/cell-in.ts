// A cell of a record's table as it is shown: its own digits, or a number in another unit.
import { columnValues } from "../calc/column-values.ts";
import type { Row, Table } from "../model/model.ts";
import type { Unit } from "../quantity/unit.ts";
import { writtenIn } from "./wanted-units.ts";

/** `undefined` where the table has no such cell; what is no number stays as it was written. */
export function cellIn(table: Table | undefined, name: string, row: Row, unit: Unit): string | undefined {
  const values = columnValues(table, name);
  const text = values?.cell(row)?.text;
  const value = values?.value(row);
  const own = table?.columns.find((column) => column.name === name)?.unit;
  if (values === undefined || text === undefined || value === undefined || own === undefined) return text;
  return writtenIn({ text, value, step: values.step(row), unit: own }, unit);
}
