// The only position below the protocol layer: a stretch of one line.

/** A stretch of one line: `line` counts from 0, `from` and `to` are UTF-16 columns from 0, `to` exclusive. */
export interface Span {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** The same stretch, `lines` further down: spans inside a block count from the block's first line. */
export function shifted(span: Span, lines: number): Span {
  return { line: span.line + lines, from: span.from, to: span.to };
}
