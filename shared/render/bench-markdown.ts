// Sets the histories of benches as Markdown, for reviews and notes.
import { benchLines } from "./bench-lines.ts";
import { type BenchSection, benchSections } from "./bench-sections.ts";
import { type BenchPage, LINES_TITLE, NO_BENCH, scopeWords } from "./bench-text.ts";
import { markdownText } from "./markdown.ts";
import { sectionMarkdown, tableLines } from "./table-markdown.ts";

/** One heading a bench, one a section below it. */
export function benchMarkdown(pages: readonly BenchPage[]): string {
  return pages.length === 0 ? `${NO_BENCH}\n` : pages.map(pageMarkdown).join("\n");
}

function pageMarkdown({ report, units }: BenchPage): string {
  const { bench } = report;
  const title = bench.title === undefined ? bench.id : `${bench.id}: ${bench.title}`;
  const lines = benchLines(bench, report.lines, units).flatMap(({ text, reason }) => [
    `    # ${reason}`,
    ...(text === undefined ? [] : [`    ${text}`]),
  ]);
  return sectionMarkdown([
    [`## ${markdownText(title)}`],
    [markdownText(scopeWords(report))],
    ...benchSections(report, units).flatMap(sectionLines),
    [`### ${LINES_TITLE}`],
    lines,
  ]);
}

function sectionLines({ title, sentences, tables }: BenchSection): readonly (readonly string[])[] {
  return [
    [`### ${markdownText(title)}`],
    sentences.map((sentence) => `- ${markdownText(sentence)}`),
    ...tables.map(tableLines),
  ];
}
