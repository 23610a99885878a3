// Places in a text as editors speak of them: lines and columns from 0, columns in UTF-16 units.
import type { Span } from "../../shared/text/span.ts";

export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Whether a place lies in a stretch of its line, its end included: that is where a cursor stands behind a word. */
export function isAt(span: Span, { line, column }: Position): boolean {
  return span.line === line && column >= span.from && column <= span.to;
}
