// A line of a record with carets below what a finding is about.
import { printable } from "../../shared/text/printable.ts";
import { cellWidth } from "./cell-width.ts";

/** Characters of a line that are shown at most, and those of them before the place itself. */
const LONGEST = 160;
const BEFORE = 60;
const TAB = "    ";

export interface Excerpt {
  readonly text: string;
  /** Blanks and carets; at least one caret. */
  readonly carets: string;
}

/** The line, cut where it is very long, with columns counted from 1, `end` exclusive. */
export function excerpt(line: string, start: number, end: number): Excerpt {
  const from = start - 1 <= LONGEST - BEFORE ? 0 : start - 1 - BEFORE;
  const to = Math.min(line.length, from + LONGEST);
  const left = from > 0 ? "…" : "";
  const right = to < line.length ? "…" : "";
  const before = left + shown(line.slice(from, start - 1));
  const marked = shown(line.slice(start - 1, Math.min(end - 1, to)));
  const after = shown(line.slice(Math.max(start - 1, Math.min(end - 1, to)), to));
  return {
    text: `${before}${marked}${after}${right}`.trimEnd(),
    carets: " ".repeat(cellWidth(before)) + "^".repeat(Math.max(1, cellWidth(marked))),
  };
}

function shown(text: string): string {
  return printable(text.replaceAll("\t", TAB).toWellFormed());
}
