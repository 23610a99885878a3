// The line that is being written, cut at the word or text under the cursor.
import type { Form } from "../../grammar/directive.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import { isInsideText } from "./inside-text.ts";
import { blockAt } from "./line-at.ts";
import type { Position } from "./position.ts";

export interface OpenLine {
  readonly line: number;
  /** Its text up to the word under the cursor, or up to the quote that opens the text under it. */
  readonly before: string;
  /** Its text from there to the cursor's word's end on. */
  readonly behind: string;
  /** Whether the cursor stands in a text. */
  readonly isQuoted: boolean;
  /** The stretch of the line that an offer takes the place of. */
  readonly place: { readonly from: number; readonly to: number };
  /** The block that it stands in. */
  readonly placed: PlacedBlock | undefined;
}

export function openLine(outline: Outline, { line, column }: Position): OpenLine {
  const text = outline.lines[line]?.text ?? "";
  const typed = text.slice(0, column);
  const isQuoted = isInsideText(typed);
  const place = isQuoted ? textAt(text, column) : wordAt(text, column);
  const before = text.slice(0, isQuoted ? place.from - 1 : place.from);
  const placed = blockOf(outline, line, before);
  return { line, before, behind: text.slice(place.to), isQuoted, place, placed };
}

/** The first word of the line. */
export function keywordOf({ before }: OpenLine): string {
  return /^\s*(\S+)/.exec(before)?.[1] ?? "";
}

/** The form of the line as far as its first word tells. */
export function formOf(open: OpenLine): Form | undefined {
  const keyword = keywordOf(open);
  const { placed } = open;
  return (placed && findProperty(placed.block.heading.block, keyword)) ?? findHeading(keyword);
}

function textAt(text: string, column: number): OpenLine["place"] {
  const end = text.indexOf('"', column);
  return { from: text.slice(0, column).lastIndexOf('"') + 1, to: end < 0 ? text.length : end };
}

function wordAt(text: string, column: number): OpenLine["place"] {
  const word = /[^\s"[\]]*$/.exec(text.slice(0, column))?.[0] ?? "";
  const tail = /^[^\s"[\]]*/.exec(text.slice(column))?.[0] ?? "";
  return { from: column - word.length, to: column + tail.length };
}

/** For a heading's first word the block above it, for the rest of a heading none. */
function blockOf(outline: Outline, line: number, before: string): PlacedBlock | undefined {
  const placed = blockAt(outline, line);
  if (placed?.start !== line) return placed;
  return before.trim() === "" ? blockAt(outline, line - 1) : undefined;
}
