// Findings as workflow commands, which become annotations of a change.
import type { CheckFinding } from "../../../shared/messages/report.ts";
import { printable } from "../../../shared/text/printable.ts";
import { type Outcome, summaryWords } from "../outcome.ts";

/** A step shows no more annotations than this of each level; the rest would be lost without a word. */
const SHOWN_PER_LEVEL = 10;

const LEVELS = [
  ["error", "error"],
  ["warning", "warning"],
  ["hint", "notice"],
] as const;

/** The worst first, at most ten of a level, then one line that counts them all. */
export function githubReport({ findings, summary }: Outcome): string {
  const shown = LEVELS.flatMap(([severity, command]) =>
    findings
      .filter((finding) => finding.severity === severity)
      .slice(0, SHOWN_PER_LEVEL)
      .map((finding) => annotation(command, finding)),
  );
  const left = findings.length - shown.length;
  const more = left === 0 ? "" : `; ${left} of them not shown here`;
  return [...shown, `${summaryWords(summary)}${more}`, ""].join("\n");
}

function annotation(command: string, { file, range, code, message, help }: CheckFinding): string {
  const { start, end } = range;
  const properties = [
    `file=${escapedProperty(file)}`,
    `line=${start.line}`,
    `endLine=${end.line}`,
    `col=${start.column}`,
    `endColumn=${end.column}`,
    `title=${escapedProperty(code)}`,
  ];
  const lines = [message, help].filter((line) => line !== "").map(printable);
  return `::${command} ${properties.join(",")}::${escapedData(lines.join("\n"))}`;
}

function escapedData(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

function escapedProperty(text: string): string {
  return escapedData(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
