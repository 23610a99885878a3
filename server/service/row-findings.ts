// Which findings stand on a reading, and what they say of its port.
import type { RowResult } from "../../shared/model/result.ts";
import type { Span } from "../../shared/text/span.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { PORT_CODES } from "../rules/index.ts";
import type { Judged } from "./findings.ts";

/** Codes of the findings on a run's rows, each once a row, in the order of the line; rows without any are missing. */
export function rowFindings(
  { placed, result }: ComputedRun,
  findings: readonly Judged[],
): ReadonlyMap<RowResult, readonly string[]> {
  const byLine = new Map<number, Set<string>>();
  const mark = ({ line }: Span, code: string) => {
    const known = byLine.get(line) ?? new Set<string>();
    byLine.set(line, known.add(code));
  };
  for (const { finding } of findings) {
    mark(finding.span, finding.code);
    for (const { span, isMarked } of finding.related) if (isMarked) mark(span, finding.code);
  }
  return new Map(
    result.rows.flatMap((row) => {
      const codes = byLine.get(placed.start + row.row.line);
      return codes === undefined ? [] : [[row, [...codes]] as const];
    }),
  );
}

/** What the findings on a run's rows say of its port, in their order. */
export function portWords({ placed, result }: ComputedRun, findings: readonly Judged[]): readonly string[] {
  const lines = new Set(result.rows.map(({ row }) => placed.start + row.line));
  return findings
    .filter(({ finding }) => PORT_CODES.includes(finding.code) && lines.has(finding.span.line))
    .map(({ finding, message }) => `${finding.code}: ${message}`);
}
