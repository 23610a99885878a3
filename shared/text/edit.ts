// A replacement of a stretch of one line, or a line taken out: the only ways in which a fix may change a file.
import type { Span } from "./span.ts";

export interface Edit {
  readonly span: Span;
  readonly text: string;
  /** The line goes with its end; the span is all of it, and the text is empty. */
  readonly takesLine?: true;
}

/** An edit that takes a line of that length out and leaves no blank one behind. */
export function lineTakenOut(line: number, length: number): Edit {
  return { span: { line, from: 0, to: length }, text: "", takesLine: true };
}

/** Where an edit ends: behind its stretch, or where the next line begins. */
export function editEnd({ span, takesLine }: Edit): { readonly line: number; readonly column: number } {
  return takesLine ? { line: span.line + 1, column: 0 } : { line: span.line, column: span.to };
}

/** Applies edits to the lines of a text; edits must not overlap, their order does not matter. */
export function applyEdits(lines: readonly string[], edits: readonly Edit[]): string[] {
  const changed = [...lines];
  const lastFirst = [...edits].sort((a, b) => b.span.line - a.span.line || b.span.from - a.span.from);
  for (const { span, text, takesLine } of lastFirst) {
    const line = changed[span.line];
    if (line === undefined) continue;
    if (takesLine) changed.splice(span.line, 1);
    else changed[span.line] = line.slice(0, span.from) + text + line.slice(span.to);
  }
  return changed;
}
