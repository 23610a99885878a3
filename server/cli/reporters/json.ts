// Findings for programs, in the published schema.
import type { CheckReport } from "../../../shared/messages/report.ts";
import { SCHEMA_VERSION } from "../../../shared/messages/schema-version.ts";
import type { Outcome } from "../outcome.ts";

/** One JSON document; valid also where there is nothing to report. */
export function jsonReport({ findings, summary }: Outcome): string {
  const report: CheckReport = { schemaVersion: SCHEMA_VERSION, findings: [...findings], summary };
  return `${JSON.stringify(report, null, 2)}\n`;
}
