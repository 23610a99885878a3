// Tells what kind of line stands there from its first words alone, before anything is parsed.
import { type IToken, tokenMatcher } from "chevrotain";
import { isColumnName } from "./columns.ts";
import { LeftBracket, Word } from "./tokens.ts";
import type { Line } from "./tree.ts";

const conflictMark = /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/;
const rowStart = /^(?:[-\u2212]$|[-+\u2212]?\.?\p{Nd})/u;

/** Whether the line is a mark that a version-control system left behind. */
export function isConflictMark(text: string): boolean {
  return conflictMark.test(text);
}

/**
 * The kind of a line from its tokens without blanks and comment. A row begins with a number or `-`; a columns line has a
 * bracket behind its first word, or is made of column names alone; everything else is a directive, known or not.
 */
export function lineKind(words: readonly IToken[]): Line["kind"] {
  const first = words[0];
  if (first === undefined) return "blank";
  if (rowStart.test(first.image)) return "row";
  return isColumnsLine(words) ? "columns" : "directive";
}

function isColumnsLine(words: readonly IToken[]): boolean {
  let named = 0;
  for (const [index, token] of words.entries()) {
    if (token.tokenType === LeftBracket) return index > 0;
    if (!tokenMatcher(token, Word)) return false;
    if (isColumnName(token.image)) named++;
  }
  return named >= 2 && named === words.length;
}
