// Which findings stand on a reading.
import type { RowResult } from "../../shared/model/result.ts";
import type { ComputedRun } from "../analysis/project.ts";
import type { Judged } from "../service/findings.ts";

/** Codes of the findings on a run's rows, each once a row, in the order of the line; rows without any are missing. */
export function rowFindings(
  { placed, result }: ComputedRun,
  findings: readonly Judged[],
): ReadonlyMap<RowResult, readonly string[]> {
  const byLine = new Map<number, Set<string>>();
  for (const { finding } of findings) {
    const known = byLine.get(finding.span.line) ?? new Set<string>();
    byLine.set(finding.span.line, known.add(finding.code));
  }
  return new Map(
    result.rows.flatMap((row) => {
      const codes = byLine.get(placed.start + row.row.line);
      return codes === undefined ? [] : [[row, [...codes]] as const];
    }),
  );
}
