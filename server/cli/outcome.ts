// What checking found, in the words and positions that all reporters print.
import type { Related } from "../../shared/finding.ts";
import type { CheckFinding, CheckReport } from "../../shared/messages/report.ts";
import { type Edit, editEnd } from "../../shared/text/edit.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Judged } from "../service/findings.ts";
import { shownPath } from "./shown-path.ts";

/** Files and findings in the order in which they are printed. */
export interface Outcome {
  /** Those that were read, as they are printed; few reporters name them all. */
  readonly files: () => readonly string[];
  readonly findings: readonly CheckFinding[];
  readonly summary: CheckReport["summary"];
  /** A line of one of the files, counted from 1; "" where there is none. */
  readonly lineOf: (file: string, line: number) => string;
  /** Whether a finding makes the command fail. */
  readonly fails: (finding: CheckFinding) => boolean;
}

/** A finding of a file at `path`, both printed and counted as in all machine output: from 1, in UTF-16 units. */
export function reportedFinding(cwd: string, path: string, judged: Judged): CheckFinding {
  const { finding, severity, message, help } = judged;
  const { code, span, related, fix } = finding;
  return {
    file: shownPath(cwd, path),
    range: rangeOf(span),
    code,
    severity,
    message,
    help,
    related: related.map((place) => reportedPlace(cwd, path, place)),
    fix:
      fix === undefined
        ? null
        : {
            title: fix.title,
            edits: fix.edits.map((edit) => ({ range: editRange(edit), text: edit.text })),
          },
  };
}

function reportedPlace(cwd: string, path: string, { file, span, message }: Related) {
  return { file: shownPath(cwd, file ?? path), range: rangeOf(span), message };
}

function rangeOf({ line, from, to }: Span): CheckFinding["range"] {
  return { start: { line: line + 1, column: from + 1 }, end: { line: line + 1, column: to + 1 } };
}

function editRange(edit: Edit): CheckFinding["range"] {
  const { line, column } = editEnd(edit);
  return { start: rangeOf(edit.span).start, end: { line: line + 1, column: column + 1 } };
}

/** How many of each kind there are. */
export function summaryOf(files: number, findings: readonly CheckFinding[]): CheckReport["summary"] {
  const count = (severity: CheckFinding["severity"]) =>
    findings.filter((finding) => finding.severity === severity).length;
  return { files, errors: count("error"), warnings: count("warning"), hints: count("hint") };
}

/** The summary in words: `3 files, 1 error, 2 warnings, 1 hint`. */
export function summaryWords({ files, errors, warnings, hints }: CheckReport["summary"]): string {
  const counted = [counts(errors, "error"), counts(warnings, "warning"), counts(hints, "hint")];
  const found = counted.filter((words) => words !== "");
  return [counts(files, "file") || "no files", ...(found.length === 0 ? ["no findings"] : found)].join(", ");
}

function counts(count: number, noun: string): string {
  return count === 0 ? "" : `${count} ${noun}${count === 1 ? "" : "s"}`;
}
