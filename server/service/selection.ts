// The ever larger stretches around a cursor: word, line, block, file.
import { lexLine } from "../../grammar/lexer.ts";
import { WhiteSpace } from "../../grammar/tokens.ts";
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
  const indent = Math.min(text.length - text.trimStart().length, column);
  add({ line, column: indent }, { line, column: Math.max(text.trimEnd().length, column) });
  const placed = blockAt(outline, line);
  if (placed !== undefined) {
    const last = placed.start + placed.block.lines.length - 1;
    add({ line: placed.start, column: 0 }, { line: last, column: outline.lines[last]?.text.length ?? 0 });
  }
  const last = outline.lines.length - 1;
  add({ line: 0, column: 0 }, { line: last, column: outline.lines[last]?.text.length ?? 0 });
  return found;
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.column < b.column);
}
