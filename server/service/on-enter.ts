// Enter at the end of a row starts the next one: the next lift station, and the target depression.
import { startOf } from "../../shared/model/cells.ts";
import type { Row, Run, Stations, Table } from "../../shared/model/model.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI, toSI, type Unit } from "../../shared/quantity/unit.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Position } from "./position.ts";
import { runAt } from "./row-at.ts";

const ROUNDING = 1e-9;

/**
 * The text of the row that follows the one with its end at a place, up to where the reading is to be typed; `undefined`
 * anywhere else than behind a row and its remark, and behind the last station. What was set aside is read again.
 */
export function nextRow(analysis: Analysis, position: Position): string | undefined {
  const run = runAt(analysis, position.line);
  const { table } = run?.setup.run ?? {};
  const row = table?.rows.find((each) => each.line + (run?.placed.start ?? 0) === position.line);
  if (run === undefined || table === undefined || row === undefined) return undefined;
  const { outline } = analysis.scope.file;
  const text = outline.lines[position.line]?.text ?? "";
  const isBehindRow = position.column >= row.to && text.slice(row.to).trim() === "";
  const cells = isBehindRow ? nextCells(run.setup, table, row) : undefined;
  if (cells === undefined) return undefined;
  const head = outline.lines[run.placed.start + (table.columns[0]?.span.line ?? 0)]?.text ?? "";
  return laidOut(cells, table, head, startOf(row));
}

/** The first cells of the next row, up to the last one that is known. */
function nextCells({ run, session, target }: Setup, table: Table, row: Row): readonly string[] | undefined {
  const at = table.columns.findIndex((column) => column.name === "lift");
  const unit = table.columns[at]?.unit;
  const lift = nextLift(run, session?.stations ?? undefined, table, row, at, unit);
  if (unit === undefined || lift === undefined || at > 1) return undefined;
  const digits = decimalsOf(row, at);
  const cells: string[] = [];
  for (const [index, column] of table.columns.entries()) {
    if (index === at) cells.push(formatFixed(lift, digits));
    else if (column.name === "depression" && column.unit !== undefined) {
      cells.push(
        formatFixed(
          fromSI(target.value.value, column.unit),
          Math.max(decimalsOf(row, index), decimals(target.value.text)),
        ),
      );
    } else break;
  }
  return cells;
}

/** In the column's unit; the next of the stated stations in the direction of travel, else one more step in it. */
function nextLift(
  run: Run,
  shared: Run["stations"],
  table: Table,
  row: Row,
  at: number,
  unit: Unit | undefined,
): number | undefined {
  const here = row.values[at];
  if (unit === undefined || here === undefined || Number.isNaN(here)) return undefined;
  if (row.void !== undefined) return here;
  const before = table.rows.slice(0, table.rows.indexOf(row)).findLast((each) => {
    const lift = each.values[at];
    return each.void === undefined && lift !== undefined && !Number.isNaN(lift) && lift !== here;
  })?.values[at];
  const travel = before === undefined ? undefined : here - before;
  const stations = run.stations ?? shared;
  if (stations !== undefined) {
    const next = nextStation(stations, toSI(here, unit), travel !== undefined && travel < 0);
    return next === undefined ? undefined : fromSI(next, unit);
  }
  const next = travel === undefined ? undefined : here + travel;
  return next === undefined || next <= 0 ? undefined : next;
}

/** The station behind a lift on the way up or down, in m; `undefined` behind the last one. */
function nextStation({ first, last, step }: Stations, lift: number, isFalling: boolean): number | undefined {
  if (!(step.value > 0)) return undefined;
  const steps = (lift - first.value) / step.value;
  const count = isFalling ? Math.ceil(steps - ROUNDING) - 1 : Math.floor(steps + ROUNDING) + 1;
  const next = first.value + step.value * count;
  const slack = step.value * ROUNDING;
  if (isFalling) return next < first.value - slack ? undefined : Math.min(next, last.value);
  return next > last.value + slack ? undefined : Math.max(next, first.value);
}

function decimalsOf(row: Row, index: number): number {
  return decimals(row.text.slice(row.bounds[2 * index], row.bounds[2 * index + 1]));
}

function decimals(text: string): number {
  const point = text.indexOf(".");
  return point < 0 ? 0 : text.length - point - 1;
}

/** Cells right-aligned to the ends of their heads, as the formatter sets them, and a blank behind them. */
function laidOut(cells: readonly string[], table: Table, head: string, indent: number): string {
  let line = "";
  for (const [index, cell] of cells.entries()) {
    const column = table.columns[index];
    const end = column === undefined ? 0 : endOfHead(head, column.span.to);
    const gap = index === 0 ? Math.min(indent, 2) : 2;
    line = line.padEnd(Math.max(line.length + gap, end - cell.length)) + cell;
  }
  return `${line}  `;
}

/** The bracket of a head belongs to it. */
function endOfHead(head: string, nameEnd: number): number {
  const bracket = /^\s*\[[^\]]*\]/.exec(head.slice(nameEnd));
  return nameEnd + (bracket?.[0].length ?? 0);
}
