// The findings of what the preview shows, as many as anybody reads there.
import type { PreviewView } from "../../shared/messages/preview.ts";
import type { Judged } from "./findings.ts";

/** A list longer than this is read in the problems panel. */
const MOST_FINDINGS = 100;

export function listedFindings(findings: readonly Judged[]): Pick<PreviewView, "findings" | "moreFindings"> {
  return {
    findings: findings.slice(0, MOST_FINDINGS).map(({ finding, severity, message, help }) => ({
      line: finding.span.line,
      severity,
      code: finding.code,
      message,
      help,
    })),
    moreFindings: Math.max(0, findings.length - MOST_FINDINGS),
  };
}
