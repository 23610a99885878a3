// Tells what kind of line stands there from its first words alone, before anything is parsed.
import { type IToken, tokenMatcher } from "chevrotain";
import { isColumnName } from "./columns.ts";
import { isKeyword } from "./directives/index.ts";
import { LeftBracket, Word } from "./tokens.ts";

const conflictMark = /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/;
const rowStart = /^(?:[-\u2010-\u2015\u2212]$|[-+\u2010-\u2015\u2212]?[.,]?\p{Nd})/u;
const ownKeyword = /^x-/;

/** Whether the line is a mark that a version-control system left behind. */
export function isConflictMark(text: string): boolean {
  return conflictMark.test(text);
}

/** Whether a word is a keyword of the user's own, whose lines are kept as they are. */
export function isOwnKeyword(word: string): boolean {
  return ownKeyword.test(word);
}

/**
 * The kind of a line from its tokens without blanks and comment, of which the first is a word. A row begins with a number
 * or `-`; a columns line has brackets behind its names, or is made of column names alone; everything else is a directive,
 * known or not.
 */
export function lineKind(words: readonly IToken[]): "blank" | "row" | "columns" | "directive" {
  const first = words[0]?.image;
  if (first === undefined) return "blank";
  if (rowStart.test(first)) return "row";
  return !isOwnKeyword(first) && isColumnsLine(first, words) ? "columns" : "directive";
}

function isColumnsLine(first: string, words: readonly IToken[]): boolean {
  let named = 0;
  for (const [index, token] of words.entries()) {
    // A value in front of the bracket, or a keyword that is no column, and the bracket is a slip in another kind of line.
    if (token.tokenType === LeftBracket) return index > 0 && (isColumnName(first) || !isKeyword(first));
    if (!tokenMatcher(token, Word) || rowStart.test(token.image)) return false;
    if (isColumnName(token.image)) named++;
  }
  return named >= 2 && named === words.length;
}
