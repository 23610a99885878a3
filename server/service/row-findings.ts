// Which findings stand on a reading, and what they say of its port.
import type { RowResult } from "../../shared/model/result.ts";
import type { Span } from "../../shared/text/span.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { PORT_CODES } from "../rules/index.ts";
import type { Judged } from "./findings.ts";

/** Findings by the line that they stand on. */
interface Lines {
  readonly codes: ReadonlyMap<number, ReadonlySet<string>>;
  readonly ofPort: ReadonlyMap<number, readonly Judged[]>;
}

/** Codes of the findings on a run's rows, each once a row, in the order of the line; rows without any are missing. */
export function rowFindings(
  { placed, result }: ComputedRun,
  findings: readonly Judged[],
): ReadonlyMap<RowResult, readonly string[]> {
  const { codes } = linesOf(findings);
  return new Map(
    result.rows.flatMap((row) => {
      const own = codes.get(placed.start + row.row.line);
      return own === undefined ? [] : [[row, [...own]] as const];
    }),
  );
}

/** What the findings on a run's rows say of its port, in their order. */
export function portWords({ placed, result }: ComputedRun, findings: readonly Judged[]): readonly string[] {
  const { ofPort } = linesOf(findings);
  return result.rows
    .flatMap(({ row }) => ofPort.get(placed.start + row.line) ?? [])
    .map(({ finding, message }) => `${finding.code}: ${message}`);
}

/** A file is asked for the findings of each of its runs. */
const known = new WeakMap<readonly Judged[], Lines>();

function linesOf(findings: readonly Judged[]): Lines {
  const before = known.get(findings);
  if (before !== undefined) return before;
  const codes = new Map<number, Set<string>>();
  const mark = ({ line }: Span, code: string) => {
    const there = codes.get(line) ?? new Set<string>();
    codes.set(line, there.add(code));
  };
  for (const { finding } of findings) {
    mark(finding.span, finding.code);
    for (const { span, isMarked } of finding.related) if (isMarked) mark(span, finding.code);
  }
  const ofPort = Map.groupBy(
    findings.filter(({ finding }) => PORT_CODES.includes(finding.code)),
    ({ finding }) => finding.span.line,
  );
  known.set(findings, { codes, ofPort });
  return { codes, ofPort };
}
