// What every layer reports: a finding is plain data, its words are made by its kind.
import type { Edit } from "./text/edit.ts";
import type { Span } from "./text/span.ts";

export type Severity = "error" | "warning" | "hint";

/** A mend that can be applied as it stands; every edit lies in the finding's own file. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** Another place that the finding speaks of; without `file` it lies in the finding's own file. */
export interface Related {
  readonly file?: string;
  readonly span: Span;
  readonly message: string;
  /** The finding is as true of this place as of its own, so that a picture marks both. */
  readonly isMarked?: true;
}

export type FindingArgs = Readonly<Record<string, string | number>>;

export interface Finding {
  readonly code: string;
  readonly span: Span;
  readonly args: FindingArgs;
  readonly related: readonly Related[];
  readonly fix?: Fix;
  /** Where this one weighs otherwise than its kind does. */
  readonly severity?: Severity;
}

/** What a finding may have beside its place and arguments. */
export interface FindingExtras {
  readonly related?: readonly Related[];
  readonly fix?: Fix | undefined;
  readonly severity?: Severity;
}

/**
 * A kind of finding: the one place where its words stand. `message` says what, how much and against which limit; `help`
 * says what to do. `bad` and `good` are whole example files (a second file begins with a line `#- path`); the tests run
 * both, and `explain` and REFERENCE.md print them.
 */
export interface FindingKind<A extends FindingArgs = FindingArgs> {
  readonly code: string;
  readonly severity: Severity;
  readonly message: (args: A) => string;
  readonly help: (args: A) => string;
  readonly what: string;
  readonly why: string;
  readonly bad: string;
  readonly good: string;
}

/** Makes a finding of a kind; the type of `args` is the one that the kind's words need. */
export function raise<A extends FindingArgs>(
  kind: FindingKind<A>,
  span: Span,
  args: A,
  { related = [], fix, severity }: FindingExtras = {},
): Finding {
  const finding = { code: kind.code, span, args, related };
  return { ...finding, ...(fix !== undefined && { fix }), ...(severity !== undefined && { severity }) };
}

/** A finding whose span counts from a block's first line, moved to that block's place in the file. */
export function shiftedFinding(finding: Finding, lines: number): Finding {
  if (lines === 0) return finding;
  const move = (span: Span): Span => ({ line: span.line + lines, from: span.from, to: span.to });
  const moved: Finding = {
    ...finding,
    span: move(finding.span),
    related: finding.related.map((r) => (r.file === undefined ? { ...r, span: move(r.span) } : r)),
  };
  if (finding.fix === undefined) return moved;
  const edits = finding.fix.edits.map((edit) => ({ ...edit, span: move(edit.span) }));
  return { ...moved, fix: { title: finding.fix.title, edits } };
}
