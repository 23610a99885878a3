// Results, and the numbers of other pictures, as the rows of a table on a page, each with the line that it comes from.
import type { PreviewTable } from "../../shared/messages/preview.ts";
import type { NumbersTable } from "../../shared/render/numbers-table.ts";
import { runTable, type TableColumn } from "../../shared/render/run-table.ts";
import type { WantedUnits } from "../../shared/render/wanted-units.ts";
import type { ComputedRun } from "../analysis/project.ts";
import type { Judged } from "./findings.ts";
import { rowFindings } from "./row-findings.ts";

/** A page with more rows than this is slow, and nobody reads them there. */
export const MOST_ROWS = 400;

export function previewTable(
  run: ComputedRun,
  findings: readonly Judged[],
  wanted: WantedUnits,
): PreviewTable {
  const { placed, result } = run;
  const codes = rowFindings(run, findings);
  const { id, title, head, columns, averages, summary } = runTable(
    result,
    { findingsOf: (_, row) => codes.get(row) ?? [], wanted },
    MOST_ROWS,
  );
  const rows = cellsByRow(columns);
  const shown = result.rows.slice(0, MOST_ROWS);
  return {
    title: title === undefined ? id : `${id}: ${title}`,
    head,
    columns: columns.map(headOf),
    rows: shown.flatMap(({ row }, index) => {
      const cells = rows[index];
      return cells === undefined ? [] : [{ line: placed.start + row.line, cells }];
    }),
    more: result.rows.length - shown.length,
    averages: { columns: averages.map(wholeHeadOf), rows: cellsByRow(averages) },
    summary: [...summary],
  };
}

/** The numbers of a block that begins on `start`. */
export function numbersTable(
  { title, head, columns, lines, more }: NumbersTable,
  start: number,
): PreviewTable {
  const rows = cellsByRow(columns).slice(0, MOST_ROWS);
  return {
    title,
    head,
    columns: columns.map(wholeHeadOf),
    rows: rows.map((cells, at) => {
      const line = lines[at];
      return { line: line === undefined ? null : start + line, cells };
    }),
    more: more + lines.length - rows.length,
    averages: { columns: [], rows: [] },
    summary: [],
  };
}

/** What a reader asks for first; where there is little room the rest is shown when it is asked for. */
const FIRST: readonly string[] = ["lift", "corrected flow", "±U", "remarks"];

function headOf({ title, unit, isNumber }: TableColumn): PreviewTable["columns"][number] {
  return { title, unit, isNumber, isAside: !FIRST.includes(title) };
}

function wholeHeadOf(column: TableColumn): PreviewTable["columns"][number] {
  return { ...headOf(column), isAside: false };
}

function cellsByRow(columns: readonly TableColumn[]): string[][] {
  const count = columns[0]?.cells.length ?? 0;
  return Array.from({ length: count }, (_, index) => columns.map(({ cells }) => cells[index] ?? ""));
}
