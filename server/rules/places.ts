// Where a rule's findings point to: rows, cells, and the lines that state a run's conditions.
import { cellAt, startOf } from "../../shared/model/cells.ts";
import type { Origin, Row, Run } from "../../shared/model/model.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { SettledRun } from "../analysis/project.ts";
import type { FileInput } from "./rule.ts";

/** A whole row, counted from its run's heading. */
export function rowSpan(row: Row): Span {
  return { line: row.line, from: startOf(row), to: row.to };
}

/** The line that states a run's baseline, counted from its heading. */
export function baselineSpan({ origin, baseline }: Run): Span {
  return origin.lines.get("baseline") ?? baseline?.span ?? origin.heading;
}

/** One cell of a row, counted from the run's heading; the whole row where it has none of that column. */
export function cellSpan(run: Run, row: Row, column: string): Span {
  const at = run.table?.columns.findIndex((entry) => entry.name === column) ?? -1;
  const cell = cellAt(row, at);
  return cell === undefined ? rowSpan(row) : { line: row.line, from: cell.from, to: cell.to };
}

/**
 * Where a condition is missing, in the file: the session's heading, since that is where it would serve all runs, else the
 * run's own.
 */
export function conditionsSpan({ scope }: FileInput, { placed }: SettledRun): Span {
  const { session } = scope.file;
  const { entity, start } = session ?? placed;
  return shifted(entity.origin.heading, start);
}

/** The line of the file in which a run or its session states a keyword; the conditions' place where neither does. */
export function statedSpan(input: FileInput, run: SettledRun, keyword: string): Span {
  const own = lineOf(run.placed.entity.origin, keyword, run.placed.start);
  if (own !== undefined) return own;
  const { session } = input.scope.file;
  const shared = session && lineOf(session.entity.origin, keyword, session.start);
  return shared ?? conditionsSpan(input, run);
}

/** Whether a run or its session has a line of a keyword; one without a value is broken, and an error says so already. */
export function isWritten({ scope }: FileInput, { placed }: SettledRun, keyword: string): boolean {
  const origins = [placed.entity.origin, scope.file.session?.entity.origin];
  return origins.some((origin) => origin?.lines.has(keyword));
}

function lineOf(origin: Origin, keyword: string, start: number): Span | undefined {
  const span = origin.lines.get(keyword);
  return span && shifted(span, start);
}
