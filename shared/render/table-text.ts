// Sets runs as plain text for a terminal or a printer.
import { extent } from "../calc/extent.ts";
import { printable } from "../text/printable.ts";
import { PLATE_TABLE_HEAD, plateTable } from "./plate-table.ts";
import type { Fact } from "./run-facts.ts";
import { type RunTable, runTable, type TableColumn } from "./run-table.ts";
import { tableBlocks } from "./table-blocks.ts";
import type { TableInput } from "./table-input.ts";

const BETWEEN_COLUMNS = "  ";
const INDENT = "  ";

/**
 * The runs one after another, each with what its numbers stand on, its readings, the stations that are averages, and its
 * summary; then what traces and ladders give. Ends in a line end; no line ends in a blank, and no character of the record acts on a terminal.
 */
export function tableText(input: TableInput): string {
  const { file, runs, plates } = input;
  const blocks = runs.map((run) => runText(runTable(run, input)));
  if (plates.length > 0)
    blocks.push(sectionText([["check plates", INDENT + PLATE_TABLE_HEAD], columnLines(plateTable(plates))]));
  blocks.push(...tableBlocks(input).map(({ title, facts }) => sectionText([[title, ...factLines(facts)]])));
  return blocks.length === 0 ? `${printable(`${file}: no runs`)}\n` : blocks.join("\n");
}

function factLines(facts: readonly Fact[]): readonly string[] {
  const labels = Math.max(...facts.map(({ label }) => label.length));
  return facts.map(({ label, words }) => `${INDENT}${label.padEnd(labels)}  ${words}`);
}

function runText(table: RunTable): string {
  return sectionText([
    [table.title === undefined ? table.id : `${table.id}  ${table.title}`, ...factLines(table.facts)],
    table.columns.length === 0 ? [] : [INDENT + table.head, "", ...columnLines(table.columns)],
    table.averages.length === 0
      ? []
      : [`${INDENT}averaged where there are several readings`, "", ...columnLines(table.averages)],
    table.summary.map((line) => INDENT + line),
  ]);
}

/** Sections of lines with a blank line between them. */
export function sectionText(sections: readonly (readonly string[])[]): string {
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.map((line) => `${printable(line).trimEnd()}\n`).join(""))
    .join("\n");
}

export function columnLines(columns: readonly TableColumn[]): readonly string[] {
  const set = columns.map(setColumn);
  const heads = Math.max(...set.map(({ head }) => head.length));
  const count = columns[0]?.cells.length ?? 0;
  const line = (cellOf: (column: SetColumn) => string) =>
    INDENT + set.map((column) => column.pad(cellOf(column))).join(BETWEEN_COLUMNS);
  const headLines = Array.from({ length: heads }, (_, index) =>
    line(({ head }) => head[index - (heads - head.length)] ?? ""),
  );
  const rows = Array.from({ length: count }, (_, index) => line(({ cells }) => cells[index] ?? ""));
  return [...headLines, ...rows];
}

interface SetColumn {
  /** From the top; the last line is the unit's. */
  readonly head: readonly string[];
  readonly cells: readonly string[];
  readonly pad: (cell: string) => string;
}

/** Numbers stand with their points under each other at the right, words at the left. */
function setColumn({ title, unit, isNumber, cells }: TableColumn): SetColumn {
  const head = [...title.split(" "), unit === "" ? "" : `[${unit}]`];
  const aligned = isNumber ? alignedAtPoint(cells) : cells;
  const [, width] = extent([...head, ...aligned].map(widthOf));
  const pad = (cell: string) => {
    const blanks = " ".repeat(width - widthOf(cell));
    return isNumber ? blanks + cell : cell + blanks;
  };
  return { head, cells: aligned, pad };
}

function alignedAtPoint(cells: readonly string[]): readonly string[] {
  const decimals = (cell: string) => (cell.includes(".") ? cell.length - cell.lastIndexOf(".") : 0);
  const [, most] = extent(cells.map(decimals));
  return cells.map((cell) => cell + " ".repeat(most - decimals(cell)));
}

function widthOf(text: string): number {
  return [...text].length;
}
