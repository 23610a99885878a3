// The ever larger stretches around a cursor: word, value, line, table, block, file.
import { bind } from "../../grammar/bind.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { lexLine } from "../../grammar/lexer.ts";
import type { PlacedBlock } from "../../grammar/outline.ts";
import { WhiteSpace } from "../../grammar/tokens.ts";
import type { Line } from "../../grammar/tree.ts";
import type { SourceFile } from "../analysis/source-file.ts";
import { blockAt } from "./line-at.ts";
import type { Position } from "./position.ts";

export interface Stretch {
  readonly start: Position;
  readonly end: Position;
}

/** From the smallest to the largest; each holds the one before it. */
export function selection({ outline }: SourceFile, { line, column }: Position): readonly Stretch[] {
  const text = outline.lines[line]?.text ?? "";
  const found: Stretch[] = [];
  const add = (start: Position, end: Position): void => {
    const last = found.at(-1);
    const isLarger = last === undefined || isBefore(start, last.start) || isBefore(last.end, end);
    if (isLarger) found.push({ start, end });
  };
  for (const token of lexLine(text)) {
    const end = token.startOffset + token.image.length;
    if (token.tokenType !== WhiteSpace && column >= token.startOffset && column <= end) {
      add({ line, column: token.startOffset }, { line, column: end });
      break;
    }
  }
  const placed = blockAt(outline, line);
  const value = placed && valueAt(placed, line, column);
  if (value !== undefined) add({ line, column: value.from }, { line, column: value.to });
  const indent = Math.min(text.length - text.trimStart().length, column);
  add({ line, column: indent }, { line, column: Math.max(text.trimEnd().length, column) });
  if (placed !== undefined) {
    const table = tableOf(placed);
    if (table !== undefined && line >= table.first && line <= table.last) {
      const length = outline.lines[table.last]?.text.length ?? 0;
      add({ line: table.first, column: 0 }, { line: table.last, column: length });
    }
    const last = placed.start + placed.block.lines.length - 1;
    add({ line: placed.start, column: 0 }, { line: last, column: outline.lines[last]?.text.length ?? 0 });
  }
  const last = outline.lines.length - 1;
  add({ line: 0, column: 0 }, { line: last, column: outline.lines[last]?.text.length ?? 0 });
  return found;
}

interface Place {
  readonly from: number;
  readonly to: number;
}

/** The words of one value of a directive, or a column's name with its unit. */
function valueAt({ start, block }: PlacedBlock, line: number, column: number): Place | undefined {
  const node = block.lines[line - start];
  const holds = ({ from, to }: Place): boolean => column >= from && column <= to;
  if (node?.kind === "columns") return headsOf(node).find(holds);
  if (node?.kind !== "directive") return undefined;
  const { text } = node.keyword;
  const form = line === start ? findHeading(text) : findProperty(block.entity.kind, text);
  return form && Object.values(bind(form, node).places).find(holds);
}

function headsOf(line: Extract<Line, { readonly kind: "columns" }>): readonly Place[] {
  return line.heads.map(({ name, unit }) => {
    const bracket = unit === undefined ? -1 : line.text.indexOf("]", unit.to);
    return { from: name.from, to: bracket < 0 ? (unit?.to ?? name.to) : bracket + 1 };
  });
}

/** The first and last line of a block's table, counted in the file. */
function tableOf({ start, block }: PlacedBlock): { first: number; last: number } | undefined {
  const isPart = ({ kind }: Line): boolean => kind === "columns" || kind === "row";
  const first = block.lines.findIndex(isPart);
  return first < 0 ? undefined : { first: start + first, last: start + block.lines.findLastIndex(isPart) };
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.column < b.column);
}
