// A replacement of a stretch of one line, the only way in which a fix may change a file.
import type { Span } from "./span.ts";

export interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** Applies edits to the lines of a text; edits must not overlap, their order does not matter. */
export function applyEdits(lines: readonly string[], edits: readonly Edit[]): string[] {
  const changed = [...lines];
  const lastFirst = [...edits].sort((a, b) => b.span.line - a.span.line || b.span.from - a.span.from);
  for (const { span, text } of lastFirst) {
    const line = changed[span.line];
    if (line === undefined) continue;
    changed[span.line] = line.slice(0, span.from) + text + line.slice(span.to);
  }
  return changed;
}
