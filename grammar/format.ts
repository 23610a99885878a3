// Writes a file in its canonical form: only blanks between tokens and line ends change, never a token.
import { type IToken, tokenMatcher } from "chevrotain";
import { lineEndOf } from "../shared/text/lines.ts";
import { blockIndexAt } from "./block-at.ts";
import { FILE_KEYWORDS } from "./file-lines.ts";
import { misplacedLine } from "./findings/misplaced-line.ts";
import { unclosedBracket } from "./findings/unclosed-bracket.ts";
import { unclosedText } from "./findings/unclosed-text.ts";
import { unknownKeyword } from "./findings/unknown-keyword.ts";
import { unreadText } from "./findings/unread-text.ts";
import { lexLine } from "./lexer.ts";
import { isOwnKeyword } from "./line-kind.ts";
import { joinInchMarks } from "./line-parser.ts";
import type { Block } from "./lower-block.ts";
import { type Outline, outline, type PlacedBlock } from "./outline.ts";
import { readLines } from "./read-lines.ts";
import { CellWord, Comment, InchMark, LeftBracket, RightBracket, Void, WhiteSpace } from "./tokens.ts";
import type { Line } from "./tree.ts";

/** Blanks before a property, a line of columns, a row and an indented comment. */
export const INDENT = 2;
/** The column, from 0, at which the values of a property begin if its keyword is short enough. */
export const VALUE_STOP = 13;
/** Least blanks between two cells, two heads of columns, and before a remark, `void` or a comment behind a line. */
const GAP = 2;

const BYTE_ORDER_MARK = "\uFEFF";

/** Findings that say that a line, or a part of it, is not understood; its blanks may mean something to its author. */
const UNREAD: ReadonlySet<string> = new Set([
  misplacedLine.code,
  unclosedBracket.code,
  unclosedText.code,
  unknownKeyword.code,
  unreadText.code,
]);

/**
 * The text in canonical form, with the line end that it uses first, at its end too; `undefined` where a merge has left its
 * marks, since only a person can say what such a file should be. Never throws, and formatting twice changes nothing more.
 */
export function format(text: string): string | undefined {
  const read = outline(readLines(text));
  if (read.conflicted) return undefined;
  const lines = formatLines(read, 0, read.lines.length);
  if (lines.at(-1) !== "") lines.push("");
  return lines.join(lineEndOf(text));
}

/**
 * The canonical texts, without line ends, of the lines `from` (counted from 0) to `to` (exclusive) of a file that has no
 * conflict marker. Lines that are not read in full come as they are.
 */
export function formatLines(read: Outline, from: number, to: number): string[] {
  const before = blockIndexAt(read.blocks, from);
  const unread = unreadLines(read);
  const texts: string[] = [];
  let next = Math.max(0, before);
  let place: Place | undefined;
  for (let index = from; index < to; index++) {
    const opened = read.blocks[next];
    if (opened !== undefined && opened.start <= index) {
      place = placeOf(opened, unread);
      next++;
    }
    const line = read.lines[index];
    if (line === undefined) break;
    const text = unread.has(index) ? undefined : canonicalText(line, index, place);
    const mark = index === 0 && line.text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
    texts.push(text === undefined ? line.text : mark + text);
  }
  return texts;
}

/** The block that a line stands in, and its table's stops. */
interface Place {
  readonly start: number;
  readonly block: Block;
  /** The line of columns that the rows follow. */
  readonly head: Line | undefined;
  /** Where the cells of each column end; `undefined` where the block has no head that could be read. */
  readonly stops: readonly number[] | undefined;
}

function placeOf({ start, block }: PlacedBlock, unread: ReadonlySet<number>): Place {
  const at =
    block.heading.columns === undefined ? -1 : block.lines.findIndex(({ kind }) => kind === "columns");
  const head = block.lines[at];
  const stops =
    head === undefined || unread.has(start + at) ? undefined : columnsText(tokensOf(head.text)).stops;
  return { start, block, head, stops };
}

function unreadLines(read: Outline): ReadonlySet<number> {
  const unread = new Set<number>();
  for (const { code, span } of read.findings) if (UNREAD.has(code)) unread.add(span.line);
  for (const { start, block } of read.blocks) {
    for (const { code, span } of block.findings) if (UNREAD.has(code)) unread.add(start + span.line);
  }
  return unread;
}

/** The line laid out anew, or `undefined` where its blanks are none of the format's business. */
function canonicalText(line: Line, index: number, place: Place | undefined): string | undefined {
  const inBlock = place?.block.lines[index - place.start];
  const tokens = tokensOf(line.text);
  const text = layOut(inBlock?.kind === "row" ? inBlock : line, tokens, index === place?.start, place);
  return text !== undefined && sameTokens(tokens, tokensOf(text)) ? text : undefined;
}

function layOut(line: Line, tokens: IToken[], opens: boolean, place: Place | undefined): string | undefined {
  switch (line.kind) {
    case "blank":
      return commentText(line.text, tokens);
    case "directive":
      if (isOwnKeyword(line.keyword.text)) return undefined;
      return opens || FILE_KEYWORDS.includes(line.keyword.text)
        ? directiveText(tokens, 0, 0)
        : directiveText(tokens, INDENT, VALUE_STOP);
    case "columns":
      return line === place?.head ? columnsText(tokens).text : undefined;
    case "row":
      return place?.stops === undefined ? undefined : rowText(joinInchMarks(tokens), place.stops);
    case "conflict":
      return undefined;
  }
}

/** A line of its own for a comment keeps to the left margin, or to the lines of the block. */
function commentText(written: string, tokens: readonly IToken[]): string {
  const [comment] = tokens;
  if (comment === undefined) return "";
  const atMargin = written.replace(BYTE_ORDER_MARK, "").startsWith("#");
  return " ".repeat(atMargin ? 0 : INDENT) + imageOf(comment);
}

function directiveText(tokens: readonly IToken[], indent: number, valueStop: number): string {
  let text = "";
  for (const [index, token] of tokens.entries()) {
    let gap = index === 0 ? indent : 1;
    if (index === 1) gap = Math.max(gap, valueStop - text.length);
    if (token.tokenType === InchMark) gap = 0;
    if (token.tokenType === Comment) gap = GAP;
    text += " ".repeat(gap) + imageOf(token);
  }
  return text;
}

/** The line of columns, and where each of its heads ends. */
function columnsText(tokens: readonly IToken[]): { text: string; stops: readonly number[] } {
  let text = "";
  let inBrackets = false;
  let first = false;
  const stops: number[] = [];
  for (const token of tokens) {
    const opens = token.tokenType === LeftBracket;
    const closes = token.tokenType === RightBracket;
    const glued = opens || closes || first || token.tokenType === InchMark;
    const gap = glued ? 0 : inBrackets ? 1 : GAP;
    text += " ".repeat(gap) + imageOf(token);
    if (token.tokenType === Comment) break;
    if (!inBrackets && !opens) stops.push(text.length);
    else stops[stops.length - 1] = text.length;
    first = opens;
    inBrackets = opens || (inBrackets && !closes);
  }
  return { text, stops };
}

/** Cells end at their column's stop; one that is too long pushes only what it must. */
function rowText(tokens: readonly IToken[], stops: readonly number[]): string {
  const lastStop = stops.at(-1) ?? 0;
  let text = "";
  let cells = 0;
  let afterVoid = false;
  for (const token of tokens) {
    const image = imageOf(token);
    let column = text.length + GAP;
    if (tokenMatcher(token, CellWord)) column = Math.max(column, (stops[cells++] ?? 0) - image.length);
    else if (token.tokenType !== Comment)
      column = afterVoid ? text.length + 1 : Math.max(text.length, lastStop) + GAP;
    afterVoid = token.tokenType === Void;
    text = text.padEnd(column) + image;
  }
  return text;
}

function tokensOf(text: string): IToken[] {
  return lexLine(text).filter(({ tokenType }) => tokenType !== WhiteSpace);
}

/** The token as written; a comment without the blanks at its end. */
function imageOf(token: IToken): string {
  return token.tokenType === Comment ? token.image.trimEnd() : token.image;
}

/** Some words mean something else once a blank stands before them (`"a"#b` has no comment). */
function sameTokens(a: readonly IToken[], b: readonly IToken[]): boolean {
  return (
    a.length === b.length &&
    a.every((token, index) => {
      const other = b[index];
      return other?.tokenType === token.tokenType && imageOf(other) === imageOf(token);
    })
  );
}
