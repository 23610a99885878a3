// Sets a row aside whose reading cannot be used: it is kept, and never used.
import type { Fix } from "../../../shared/finding.ts";
import type { Analysis } from "../../analysis/project.ts";
import type { Judged } from "../findings.ts";
import { lineAt } from "../line-at.ts";

/** Only what says that a reading was not taken as it should be; a port that falls back is no reason to look away. */
const SPOILT: ReadonlySet<string> = new Set([
  "off-target",
  "read-early",
  "off-range",
  "outside-range",
  "outside-calibration",
  "impossible",
  "unit-slip",
]);

export function voidRow({ scope }: Analysis, { finding }: Judged): Fix | undefined {
  const { code, span } = finding;
  const row = lineAt(scope.file.outline, span.line);
  if (!SPOILT.has(code) || row?.kind !== "row" || row.void !== undefined) return undefined;
  const text = `void "${code.replaceAll("-", " ")}"`;
  const at = { line: span.line, from: row.to, to: row.to };
  return { title: `Set this row aside: ${text}`, edits: [{ span: at, text: `  ${text}` }] };
}
