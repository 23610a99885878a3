// Sets runs as Markdown, for reviews and notes.
import { markdownText } from "./markdown.ts";
import { PLATE_TABLE_HEAD, plateTable } from "./plate-table.ts";
import { type RunTable, runTable, type TableColumn } from "./run-table.ts";
import { type TableBlock, tableBlocks } from "./table-blocks.ts";
import type { TableInput } from "./table-input.ts";

/** One heading and one table a run, with what its numbers stand on above and its summary below; then plates, traces and ladders. */
export function tableMarkdown(input: TableInput): string {
  const { file, runs, plates } = input;
  const blocks = runs.map((run) => runMarkdown(runTable(run, input)));
  if (plates.length > 0) {
    blocks.push(sectionMarkdown([["## Check plates"], [PLATE_TABLE_HEAD], tableLines(plateTable(plates))]));
  }
  blocks.push(...tableBlocks(input).map(blockMarkdown));
  return blocks.length === 0 ? `${markdownText(`${file}: no runs`)}\n` : blocks.join("\n");
}

function blockMarkdown({ title, facts }: TableBlock): string {
  const lines = facts.map(({ label, words }) => `- ${label}: ${markdownText(words)}`);
  return sectionMarkdown([[`## ${markdownText(title)}`], lines]);
}

function runMarkdown(table: RunTable): string {
  const title = table.title === undefined ? table.id : `${table.id}: ${table.title}`;
  const sections = [
    [`## ${markdownText(title)}`],
    table.facts.map(({ label, words }) => `- ${label}: ${markdownText(words)}`),
    table.columns.length === 0 ? [] : [markdownText(table.head)],
    tableLines(table.columns),
    table.averages.length === 0 ? [] : ["Averaged where there are several readings:"],
    tableLines(table.averages),
    table.summary.map((line) => `- ${markdownText(line)}`),
  ];
  return sectionMarkdown(sections);
}

export function sectionMarkdown(sections: readonly (readonly string[])[]): string {
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.map((line) => `${line}\n`).join(""))
    .join("\n");
}

export function tableLines(columns: readonly TableColumn[]): readonly string[] {
  const count = columns[0]?.cells.length ?? 0;
  if (count === 0) return [];
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ title, unit }) => markdownText(unit === "" ? title : `${title}, ${unit}`))),
    line(columns.map(({ isNumber }) => (isNumber ? "---:" : ":---"))),
    ...Array.from({ length: count }, (_, index) =>
      line(columns.map(({ cells }) => markdownText(cells[index] ?? ""))),
    ),
  ];
}
