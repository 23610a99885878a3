// The column of the display's number, which depends on the bench.
import { missingColumns } from "../../grammar/findings/missing-columns.ts";
import { headOf } from "../../grammar/lower-table.ts";
import type { Bench, Table } from "../../shared/model/model.ts";
import { rule } from "./rule.ts";

const COLUMN_OF: Readonly<Record<string, string>> = {
  flow: "flow",
  "meter-flow": "flow",
  percent: "reading",
  drop: "drop",
  signal: "signal",
};

export const readingColumn = rule<{ block: string; missing: string; example: string }>({
  ...missingColumns,
  checkRun(result, report) {
    const { table } = result.setup.run;
    if (table === undefined || table.columns.length === 0) return;
    const missing = missingOf(result.setup.bench, table);
    if (missing === undefined) return;
    const span = table.columns[0]?.span ?? result.setup.run.origin.heading;
    report(span, { block: "run", missing: `column ${missing}`, example: headOf(missing) });
  },
});

function missingOf(bench: Bench | undefined, table: Table): string | undefined {
  const kind = bench?.shows?.kind;
  if (kind === undefined)
    return Object.values(COLUMN_OF).some((name) => has(table, name)) ? undefined : "flow";
  const column = COLUMN_OF[kind];
  if (column !== undefined && !has(table, column)) return column;
  return kind === "percent" && (bench?.ranges.length ?? 0) > 1 && !has(table, "range") ? "range" : undefined;
}

function has({ columns }: Table, name: string): boolean {
  for (const column of columns) if (column.name === name) return true;
  return false;
}
