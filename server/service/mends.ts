// Mends that a finding does not carry itself, because they need more of the file than its rule looks at.
import type { Finding, Fix } from "../../shared/finding.ts";
import { lineTakenOut } from "../../shared/text/edit.ts";
import type { Analysis } from "../analysis/project.ts";

/** Mends that say nothing new about a measurement, by code; a new one is one line. */
const MENDS: Readonly<Record<string, (analysis: Analysis, finding: Finding) => Fix | undefined>> = {
  "unused-allow": removeComment,
};

/** The mend of a finding of that code, where there is one that may be applied unseen. */
export function mendOf(analysis: Analysis, finding: Finding): Fix | undefined {
  return MENDS[finding.code]?.(analysis, finding);
}

function removeComment({ scope }: Analysis, { span }: Finding): Fix | undefined {
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  const from = text.lastIndexOf("#", span.from);
  if (from < 0) return undefined;
  const kept = text.slice(0, from).trimEnd();
  const edit =
    kept === ""
      ? lineTakenOut(span.line, text.length)
      : { span: { line: span.line, from: kept.length, to: text.length }, text: "" };
  return { title: "Take the comment out", edits: [edit] };
}
