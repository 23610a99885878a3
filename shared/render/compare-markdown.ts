// Sets comparisons as Markdown, for reviews and notes.

import type { CompareRun } from "./compare-input.ts";
import { type Compared, compareTable } from "./compare-table.ts";
import { markdownText } from "./markdown.ts";
import type { Fact } from "./run-facts.ts";
import { sectionMarkdown, tableLines } from "./table-markdown.ts";

/** One heading and one table a comparison, with its runs above and its means below. */
export function compareMarkdown(baseline: CompareRun, all: readonly Compared[]): string {
  return all
    .map((compared) => {
      const { title, facts, head, columns, notes, summary } = compareTable(baseline, compared);
      return sectionMarkdown([
        [`## ${markdownText(title)}`],
        facts.map(listItem),
        notes.map((note) => markdownText(note)),
        columns.length === 0 ? ["no readings"] : [markdownText(head)],
        tableLines(columns),
        summary.map(listItem),
      ]);
    })
    .join("\n");
}

function listItem({ label, words }: Fact): string {
  return `- ${markdownText(label)}: ${markdownText(words)}`;
}
