// Findings for people: place, words, the line itself, and what to do.
import { styleText } from "node:util";
import type { CheckFinding } from "../../../shared/messages/report.ts";
import { printable } from "../../../shared/text/printable.ts";
import { excerpt } from "../excerpt.ts";
import { type Outcome, summaryWords } from "../outcome.ts";
import type { ReportStyle } from "./reporter.ts";

const COLOURS = { error: "red", warning: "yellow", hint: "cyan" } as const;

/** One paragraph a finding, `path:line:col: severity[code]: message` first, and the summary in the last line. */
export function textReport({ findings, summary, lineOf }: Outcome, { isColoured }: ReportStyle): string {
  const paragraphs = findings.map((finding) =>
    paragraph(finding, lineOf(finding.file, finding.range.start.line), isColoured),
  );
  return [...paragraphs, `${summaryWords(summary)}\n`].join("\n");
}

function paragraph(finding: CheckFinding, line: string, isColoured: boolean): string {
  const { file, range, severity, code, message, help, related } = finding;
  const paint = (text: string, style: Parameters<typeof styleText>[0]) =>
    isColoured ? styleText(style, text, { validateStream: false }) : text;
  const number = String(range.start.line);
  const gutter = " ".repeat(number.length);
  const { text, carets } = excerpt(line, range.start.column, range.end.column);
  const lines = [
    `${placeOf(file, range)}: ${paint(`${severity}[${code}]`, ["bold", COLOURS[severity]])}: ${printable(message)}`,
    `  ${paint(`${number} |`, "dim")} ${text}`,
    `  ${paint(`${gutter} |`, "dim")} ${paint(carets, COLOURS[severity])}`,
    ...(help === "" ? [] : [`  ${paint("help:", "bold")} ${printable(help)}`]),
    ...related.map((place) => `  see ${placeOf(place.file, place.range)}: ${printable(place.message)}`),
  ];
  return `${lines.map((each) => each.trimEnd()).join("\n")}\n`;
}

function placeOf(file: string, { start }: CheckFinding["range"]): string {
  return `${printable(file)}:${start.line}:${start.column}`;
}
