// The reading that stands on a line, with its run and result.
import type { RowResult } from "../../shared/model/result.ts";
import type { Analysis, ComputedRun, SettledRun } from "../analysis/project.ts";

/** The run whose block holds a line, settled but not computed. */
export function runAt({ scope, settled }: Analysis, line: number): SettledRun | undefined {
  const length = (run: SettledRun) =>
    scope.file.outline.blocks.find(({ start }) => start === run.placed.start)?.block.lines.length ?? 0;
  const run = settled.findLast(({ placed }) => placed.start <= line);
  return run !== undefined && line < run.placed.start + length(run) ? run : undefined;
}

/** The reading on a line, and its run. */
export function rowAt(
  analysis: Analysis,
  line: number,
): { readonly run: ComputedRun; readonly row: RowResult } | undefined {
  const settled = runAt(analysis, line);
  if (settled === undefined) return undefined;
  const run = { placed: settled.placed, result: analysis.compute(settled) };
  const row = run.result.rows.find((each) => each.row.line + settled.placed.start === line);
  return row && { run, row };
}
