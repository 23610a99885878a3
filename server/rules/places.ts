// Where a rule's findings point to: rows, cells, and the lines that state a run's conditions.
import { cellAt, startOf } from "../../shared/model/cells.ts";
import type { Origin, Row } from "../../shared/model/model.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { Analysis, ComputedRun } from "../analysis/project.ts";

/** A whole row. */
export function rowSpan(run: ComputedRun, row: Row): Span {
  return { line: run.placed.start + row.line, from: startOf(row), to: row.to };
}

/** One cell of a row, or the whole row where it has none of that column. */
export function cellSpan(run: ComputedRun, row: Row, column: string): Span {
  const at = run.placed.entity.table?.columns.findIndex((entry) => entry.name === column) ?? -1;
  const cell = cellAt(row, at);
  if (cell === undefined) return rowSpan(run, row);
  return { line: run.placed.start + row.line, from: cell.from, to: cell.to };
}

/** The heading of a run. */
export function headingSpan(run: ComputedRun): Span {
  return shifted(run.placed.entity.origin.heading, run.placed.start);
}

/**
 * Where a condition is missing: the session's heading, since that is where it would serve all runs, else the run's own.
 */
export function conditionsSpan(analysis: Analysis, run: ComputedRun): Span {
  const { session } = analysis.scope.file;
  return session === undefined ? headingSpan(run) : shifted(session.entity.origin.heading, session.start);
}

/** The line in which a run or its session states a keyword; the conditions' place where neither does. */
export function statedSpan(analysis: Analysis, run: ComputedRun, keyword: string): Span {
  const own = lineOf(run.placed.entity.origin, keyword, run.placed.start);
  if (own !== undefined) return own;
  const { session } = analysis.scope.file;
  const shared = session && lineOf(session.entity.origin, keyword, session.start);
  return shared ?? conditionsSpan(analysis, run);
}

function lineOf(origin: Origin, keyword: string, start: number): Span | undefined {
  const span = origin.lines.get(keyword);
  return span && shifted(span, start);
}
