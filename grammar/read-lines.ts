// Reads a text line by line and, after an edit, only the lines that the edit has changed.
import { replaced } from "../shared/difference.ts";
import { commonEnd, commonStart } from "../shared/text/common.ts";
import { countBelow, isLineStart, lineStarts, splitLines } from "../shared/text/lines.ts";
import { parseLine } from "./line-parser.ts";
import type { Line } from "./tree.ts";

/** A text that was read. */
export interface ReadText {
  readonly text: string;
  readonly lines: readonly Line[];
  /** Where its lines begin; not known before the text is edited. */
  readonly starts?: Uint32Array;
}

/** The nodes of all lines of a text. */
export function readLines(text: string): readonly Line[] {
  return splitLines(text).map(parseLine);
}

/** A text with the nodes of its lines, as if it were read for the first time; lines that an edit leaves alone keep theirs. */
export function readText(text: string, previous?: ReadText): ReadText {
  if (previous === undefined) return { text, lines: readLines(text) };
  const { text: old, lines, starts = lineStarts(old) } = previous;
  const longer = text.length - old.length;
  const startOf = (line: number): number => starts[line] ?? old.length;
  // An edit can make one line end of two, or two of one: what begins a line in the old text need not in the new one.
  let before = countBelow(starts, commonStart(text, old) + 1) - 1;
  if (!isLineStart(text, startOf(before))) before--;
  const from = startOf(before);
  const sameEnd = commonEnd(text, old, Math.min(text.length, old.length) - from);
  let behind = countBelow(starts, old.length - sameEnd);
  if (behind < lines.length && !isLineStart(text, startOf(behind) + longer)) behind++;
  const changed = ofItsOwn(text.slice(from, startOf(behind) + longer));
  const texts = splitLines(changed);
  // Behind its last line end begins the first of the lines that are kept.
  if (behind < lines.length) texts.pop();
  const inside = lineStarts(changed).subarray(0, texts.length);
  const moved = new Uint32Array(before + texts.length + lines.length - behind);
  moved.set(starts.subarray(0, before));
  for (const [index, start] of inside.entries()) moved[before + index] = from + start;
  for (let line = behind, at = before + texts.length; line < lines.length; line++, at++) {
    moved[at] = startOf(line) + longer;
  }
  return {
    text,
    lines: replaced(lines, before, behind, texts.map(parseLine)),
    starts: moved,
  };
}

/** The same characters in a string of their own: a slice would keep the whole text that it was cut from, edit by edit. */
function ofItsOwn(slice: string): string {
  return ` ${slice}`.slice(1);
}
