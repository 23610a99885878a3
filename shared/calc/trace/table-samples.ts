// The samples that stand in a trace's own rows.
import type { Table } from "../../model/model.ts";
import type { TraceSamples } from "../../model/trace-result.ts";
import { columnValues } from "../column-values.ts";

/** SI, without void rows; `undefined` where time or depression has no column that could be read. */
export function tableSamples(table: Table, display: string): TraceSamples | undefined {
  const time = columnValues(table, "time");
  const depression = columnValues(table, "depression");
  const shown = columnValues(table, display);
  if (time === undefined || depression === undefined) return undefined;
  const rows = table.rows.filter((row) => row.void === undefined);
  const all = (column: typeof time) => Float64Array.from(rows, (row) => column.value(row) ?? Number.NaN);
  const samples = { time: all(time), depression: all(depression) };
  return shown === undefined ? samples : { ...samples, display: all(shown) };
}
