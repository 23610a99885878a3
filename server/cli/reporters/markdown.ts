// Findings as a table for a review's comment.
import type { CheckFinding } from "../../../shared/messages/report.ts";
import { markdownText } from "../../../shared/render/markdown.ts";
import { type Outcome, summaryWords } from "../outcome.ts";

const HEAD = ["| place | finding | what | help |", "| --- | --- | --- | --- |"];

/** One row a finding, then the summary. */
export function markdownReport({ findings, summary }: Outcome): string {
  const table = findings.length === 0 ? [] : [...HEAD, ...findings.map(row), ""];
  return [...table, summaryWords(summary), ""].join("\n");
}

function row({ file, range, severity, code, message, help }: CheckFinding): string {
  const place = `${file}:${range.start.line}:${range.start.column}`;
  return `| ${[place, `${severity} ${code}`, message, help].map(markdownText).join(" | ")} |`;
}
