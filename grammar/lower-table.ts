// Reads the head and the rows of a block's table.
import { type Finding, raise, shiftedFinding } from "../shared/finding.ts";
import { cellAt, cellCount, startOf } from "../shared/model/cells.ts";
import type { Cell, Column, Row, Table } from "../shared/model/model.ts";
import { nearest } from "../shared/quantity/nearest.ts";
import type { Unit } from "../shared/quantity/unit.ts";
import type { Span } from "../shared/text/span.ts";
import { cellFinding } from "./cell.ts";
import { type ColumnKind, columnsWithin, findColumn } from "./columns.ts";
import type { Heading } from "./directive.ts";
import { extraCell } from "./findings/extra-cell.ts";
import { extraValue } from "./findings/extra-value.ts";
import { misplacedLine } from "./findings/misplaced-line.ts";
import { missingCell } from "./findings/missing-cell.ts";
import { repeatedLine } from "./findings/repeated-line.ts";
import { unknownColumn } from "./findings/unknown-column.ts";
import { noUnit, readUnit } from "./read-quantity.ts";
import type { ColumnHead, ColumnsLine, Line, RowLine } from "./tree.ts";

/** How the head of a column is written: `lift[in]`. */
export function headOf(name: string): string {
  return findColumn(name)?.example[0] ?? name;
}

/**
 * The table of a block: `undefined` where it has neither head nor rows, no columns where its rows stand without a head.
 * Findings are added with spans that count from the block's first line.
 */
export function lowerTable(heading: Heading, lines: readonly Line[], findings: Finding[]): Table | undefined {
  if (heading.columns === undefined) {
    reportTableLines(heading, lines, findings);
    return undefined;
  }
  let columns: readonly Column[] | undefined;
  const rows: Row[] = [];
  const early: number[] = [];
  let index = -1;
  for (const line of lines) {
    index++;
    if (line.kind === "columns") {
      if (columns === undefined) columns = columnsOf(heading, line, index, findings);
      else findings.push(again(line, index));
    } else if (line.kind === "row") {
      if (columns === undefined) early.push(index);
      else rows.push(lowerRow(columns, line, index, findings));
    }
  }
  if (columns !== undefined) {
    for (const index of early) findings.push(aboveHead(lines[index], index));
    return { columns, rows };
  }
  if (early.length === 0) return undefined;
  return { columns: [], rows: early.flatMap((index) => bareRow(lines[index], index)) };
}

interface Head {
  readonly heading: Heading;
  readonly index: number;
  readonly columns: readonly Column[];
}

const heads = new WeakMap<ColumnsLine, Head>();

/** The columns of a head. Heads that read alike share their node, so that most tables of all records share their columns. */
function columnsOf(
  heading: Heading,
  line: ColumnsLine,
  index: number,
  findings: Finding[],
): readonly Column[] {
  const before = heads.get(line);
  if (before?.heading === heading && before.index === index) return before.columns;
  const own: Finding[] = [];
  const columns = lowerColumns(heading, line, index, own);
  if (own.length === 0) heads.set(line, { heading, index, columns });
  for (const finding of own) findings.push(finding);
  return columns;
}

function lowerColumns(heading: Heading, line: ColumnsLine, index: number, findings: Finding[]): Column[] {
  const known = columnsWithin(heading.block);
  const met = new Set<string>();
  return line.heads.map((head) => {
    const span: Span = { line: index, from: head.name.from, to: head.name.to };
    const kind = known.find((column) => column.name === head.name.text);
    if (kind === undefined) {
      findings.push(notKnown(heading, head, span, known));
      return { name: head.name.text, span };
    }
    if (met.has(kind.name)) {
      findings.push(raise(repeatedLine, span, { what: `the column '${kind.name}'`, where: "table" }));
      // Its cells keep their place but are not taken for the column's own.
      return { name: `${kind.name} again`, span };
    }
    met.add(kind.name);
    const unit = columnUnit(kind, head, span, (finding) => findings.push(finding));
    return unit === undefined ? { name: kind.name, span } : { name: kind.name, unit, span };
  });
}

function columnUnit(
  kind: ColumnKind,
  head: ColumnHead,
  span: Span,
  report: (finding: Finding) => void,
): Unit | undefined {
  if (kind.dimensions.length === 0) {
    if (head.unit !== undefined && head.unit.text !== "") {
      const written = `[${head.unit.text}]`;
      report(raise(extraValue, span, { keyword: kind.name, written, form: kind.example[0] }));
    }
    return undefined;
  }
  if (head.unit === undefined || head.unit.text === "") {
    const missing = noUnit(kind.name, span, kind.dimensions);
    const whole = { line: span.line, from: span.from, to: span.to };
    const fix = { title: `Write ${kind.example[0]}`, edits: [{ span: whole, text: kind.example[0] }] };
    report(head.unit === undefined ? { ...missing, fix } : missing);
    return undefined;
  }
  return readUnit(head.unit, kind.dimensions, (finding) => report(shiftedFinding(finding, span.line)));
}

function notKnown(heading: Heading, head: ColumnHead, span: Span, known: readonly ColumnKind[]): Finding {
  const names = known.map((column) => column.name);
  const [near] = nearest(head.name.text, names);
  const args = {
    written: head.name.text,
    block: heading.block,
    nearest: near ?? "",
    known: names.join(", "),
  };
  const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
  return raise(unknownColumn, span, args, { fix });
}

function lowerRow(columns: readonly Column[], line: RowLine, index: number, findings: Finding[]): Row {
  const count = cellCount(line);
  if (count !== columns.length) findings.push(miscounted(columns, line, index));
  for (let i = 0; i < count && i < columns.length; i++) {
    if (Number.isNaN(line.values[i])) checkWord(cellAt(line, i), columns[i], index, findings);
  }
  return rowOf(line, index);
}

function rowOf({ text, values, bounds, to, remark, void: reason }: RowLine, line: number): Row {
  return { line, text, values, bounds, to, remark, void: reason };
}

/** Fewer or more cells than columns. */
function miscounted(columns: readonly Column[], line: RowLine, index: number): Finding {
  const count = cellCount(line);
  const span: Span = { line: index, from: startOf(line), to: line.bounds.at(-1) ?? line.to };
  if (count < columns.length) {
    const missing = columns.slice(count).map((column) => column.name);
    const verb = missing.length === 1 ? "is" : "are";
    const args = { cells: count, columns: columns.length, missing: `${missing.join(", ")} ${verb}` };
    return raise(missingCell, span, args);
  }
  const from = line.bounds[2 * columns.length] ?? span.from;
  return raise(extraCell, { ...span, from }, { cells: count, columns: columns.length });
}

/** A word in a column of numbers. An unknown column has been reported at its head. */
function checkWord(
  cell: Cell | undefined,
  column: Column | undefined,
  index: number,
  findings: Finding[],
): void {
  const dimensions = findColumn(column?.name ?? "")?.dimensions ?? [];
  if (cell === undefined || dimensions.length === 0) return;
  const found = cellFinding(cell, { line: index, from: cell.from, to: cell.to });
  if (found !== undefined) findings.push(found);
}

function reportTableLines(heading: Heading, lines: readonly Line[], findings: Finding[]): void {
  lines.forEach((line, index) => {
    if (line.kind !== "row" && line.kind !== "columns") return;
    const what = line.kind === "row" ? "a row of readings" : "a line of columns";
    const args = {
      what,
      where: `in a ${heading.block} block`,
      takes: "it belongs below a run and its columns",
    };
    findings.push(raise(misplacedLine, spanOf(line, index), args));
  });
}

function again(line: ColumnsLine, index: number): Finding {
  return raise(repeatedLine, spanOf(line, index), { what: "a line of columns", where: "block" });
}

function aboveHead(line: Line | undefined, index: number): Finding {
  const span = line === undefined ? { line: index, from: 0, to: 0 } : spanOf(line, index);
  const args = { what: "a row", where: "above the columns of its table", takes: "put it below them" };
  return raise(misplacedLine, span, args);
}

function bareRow(line: Line | undefined, index: number): Row[] {
  if (line?.kind !== "row") return [];
  return [rowOf(line, index)];
}

function spanOf(line: Line, index: number): Span {
  const from = line.text.length - line.text.trimStart().length;
  return { line: index, from, to: line.text.trimEnd().length };
}
