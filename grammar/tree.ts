// What one line says, before anything around it is known; nodes hold columns only, so a moved line keeps its node.
import type { Finding } from "../shared/finding.ts";
import type { Cells } from "../shared/model/model.ts";
import type { Span } from "../shared/text/span.ts";

/** A word or a text of a line. `text` is a word as written, or a text without its quotes and escapes. */
export interface Atom {
  readonly kind: "word" | "text";
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

interface LineNode {
  readonly text: string;
  /** What is wrong with the line itself; spans count from this line, so their `line` is 0. */
  readonly findings: readonly Finding[];
}

/** Nothing, or only a comment. */
export interface BlankLine extends LineNode {
  readonly kind: "blank";
}

/** A keyword and what follows it: a heading, a property, `include`, the version line, or a keyword unknown so far. */
export interface DirectiveLine extends LineNode {
  readonly kind: "directive";
  readonly keyword: Atom;
  readonly atoms: readonly Atom[];
}

export interface ColumnHead {
  readonly name: Atom;
  readonly unit?: Atom;
}

export interface ColumnsLine extends LineNode {
  readonly kind: "columns";
  readonly heads: readonly ColumnHead[];
}

export interface RowLine extends LineNode, Cells {
  readonly kind: "row";
  readonly to: number;
  readonly remark: string | undefined;
  readonly void: string | undefined;
}

/** A mark that a version-control system left behind. */
export interface ConflictLine extends LineNode {
  readonly kind: "conflict";
}

export type Line = BlankLine | DirectiveLine | ColumnsLine | RowLine | ConflictLine;

/** What stands between two places of a line, as a finding quotes it: one blank for any, so that formatting changes nothing. */
export function quoted({ text }: Line, from: number, to: number): string {
  return text.slice(from, to).trim().replace(/\s+/g, " ");
}

/** A line without the blanks around it, and without the comment behind a keyword's values. */
export function lineSpan(line: Line, index: number): Span {
  const from = line.text.length - line.text.trimStart().length;
  const to =
    line.kind === "directive" ? (line.atoms.at(-1)?.to ?? line.keyword.to) : line.text.trimEnd().length;
  return { line: index, from, to };
}
