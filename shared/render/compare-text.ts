// Sets comparisons as plain text for a terminal or a printer.

import type { CompareRun } from "./compare-input.ts";
import { type Compared, compareTable } from "./compare-table.ts";
import type { Fact } from "./run-facts.ts";
import { columnLines, sectionText } from "./table-text.ts";

const INDENT = "  ";

/** One comparison after another. Ends in a line end, and no character of a record acts on a terminal. */
export function compareText(baseline: CompareRun, all: readonly Compared[]): string {
  return all
    .map((compared) => {
      const { title, facts, head, columns, notes, summary } = compareTable(baseline, compared);
      return sectionText([
        [title, ...factLines(facts)],
        notes.map((note) => INDENT + note),
        columns.length === 0 ? [`${INDENT}no readings`] : [INDENT + head, "", ...columnLines(columns)],
        factLines(summary),
      ]);
    })
    .join("\n");
}

function factLines(facts: readonly Fact[]): readonly string[] {
  const labels = Math.max(0, ...facts.map(({ label }) => label.length));
  return facts.map(({ label, words }) => `${INDENT}${label.padEnd(labels)}  ${words}`);
}
