// The numbers behind a picture, as heads and cells.
import { formatFixed } from "../quantity/digits.ts";
import { printable } from "../text/printable.ts";
import { type CsvCell, csv } from "./csv.ts";
import { markdownText } from "./markdown.ts";
import type { Fact } from "./run-facts.ts";
import type { TableColumn } from "./run-table.ts";
import { sectionMarkdown, tableLines } from "./table-markdown.ts";

/** What stands in a cell without a value. */
export const NOTHING = "-";

export interface NumbersTable {
  readonly title: string;
  /** What the numbers are, beside the title. */
  readonly head: string;
  readonly columns: readonly TableColumn[];
  /** Where each row stands, counted from the first line of its block; nothing where it stands in another file. */
  readonly lines: readonly (number | undefined)[];
  /** Rows that were left out, since fewer were asked for. */
  readonly more: number;
}

/** A column of numbers. */
export function numbers(title: string, unit: string, cells: readonly string[]): TableColumn {
  return { title, unit, isNumber: true, cells };
}

const MOST_DECIMALS = 3;

/** As few decimals as tell the numbers as they were read, at most three. */
export function evenly(values: readonly number[]): readonly string[] {
  const finite = values.filter(Number.isFinite);
  let decimals = 0;
  for (const value of finite) {
    while (decimals < MOST_DECIMALS && !isWhole(value * 10 ** decimals)) decimals++;
  }
  return values.map((value) => (Number.isFinite(value) ? formatFixed(value, decimals) : NOTHING));
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-6;
}

/** All rows, each with the line of the file that it stands on, `start` being that of its block. */
export function numbersCsv({ columns, lines }: NumbersTable, start: number): string {
  const hasLines = lines.some((line) => line !== undefined);
  const head = columns.map(({ title, unit }) => (unit === "" ? title : `${title}[${unit}]`));
  const rows = lines.map((line, at): readonly CsvCell[] => [
    ...(hasLines ? [line === undefined ? undefined : start + line + 1] : []),
    ...columns.map(({ cells, isNumber }) => cellOf(cells[at] ?? "", isNumber)),
  ]);
  return csv([[...(hasLines ? ["line"] : []), ...head].map(printable), ...rows]);
}

/** What is not known is an empty cell. */
function cellOf(text: string, isNumber: boolean): CsvCell {
  if (!isNumber) return printable(text);
  const value = Number(text.replace("−", "-"));
  return text === "" || Number.isNaN(value) ? undefined : value;
}

export function numbersMarkdown({ title, head, columns }: NumbersTable, facts: readonly Fact[]): string {
  return sectionMarkdown([
    [`## ${markdownText(title)}`],
    facts.map(({ label, words }) => `- ${label}: ${markdownText(words)}`),
    head === "" ? [] : [markdownText(head)],
    tableLines(columns),
  ]);
}
