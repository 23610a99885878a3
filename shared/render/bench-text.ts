// Sets the histories of benches as plain text for a terminal or a printer.
import type { BenchReport } from "../calc/bench/bench-report.ts";
import { benchLines } from "./bench-lines.ts";
import { type BenchSection, benchSections } from "./bench-sections.ts";
import type { BenchUnits } from "./bench-units.ts";
import { columnLines, sectionText } from "./table-text.ts";

export interface BenchPage {
  readonly report: BenchReport;
  readonly units: BenchUnits;
}

export const NO_BENCH = "no bench in these records";
export const LINES_TITLE = "lines for the bench block";
const INDENT = "  ";

/** The benches one after another; ends in a line end. */
export function benchText(pages: readonly BenchPage[]): string {
  return pages.length === 0 ? `${NO_BENCH}\n` : pages.map(pageText).join("\n");
}

function pageText({ report, units }: BenchPage): string {
  const { bench } = report;
  const lines = benchLines(bench, report.lines, units).flatMap(({ text, reason }) => [
    `${INDENT}# ${reason}`,
    ...(text === undefined ? [] : [INDENT + text]),
  ]);
  return sectionText([
    [bench.title === undefined ? bench.id : `${bench.id}  ${bench.title}`, INDENT + scopeWords(report)],
    ...benchSections(report, units).flatMap(sectionLines),
    [LINES_TITLE],
    lines,
  ]);
}

/** From when to when, and how much. */
export function scopeWords({ records, runs, readings, first, last }: BenchReport): string {
  const counts = [
    counted(records, "record"),
    counted(runs, "run"),
    counted(readings, "reading that counts", "readings that count"),
  ].join(", ");
  const days = [first, last].map((date) => date?.slice(0, 10));
  if (days[0] === undefined || days[1] === undefined) return counts;
  return days[0] === days[1] ? `${counts}; ${days[0]}` : `${counts}; ${days[0]} to ${days[1]}`;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function sectionLines({ title, sentences, tables }: BenchSection): readonly (readonly string[])[] {
  return [[title, ...sentences.map((sentence) => INDENT + sentence)], ...tables.map(columnLines)];
}
