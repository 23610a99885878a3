// The line that takes in what another file defines.
import { type Finding, raise } from "../shared/finding.ts";
import type { Span } from "../shared/text/span.ts";
import { extraValue } from "./findings/extra-value.ts";
import { missingValue } from "./findings/missing-value.ts";
import { type DirectiveLine, lineSpan, quoted } from "./tree.ts";

/** An `include` line; its span is that of the path. */
export interface Include {
  readonly path: string;
  readonly span: Span;
}

/** The include of a line, or what is wrong with it. */
export function readInclude(line: DirectiveLine, index: number): Include | { readonly finding: Finding } {
  const [path, extra] = line.atoms;
  const form = 'include "path"';
  if (path?.kind === "text" && extra === undefined) {
    return { path: path.text, span: { line: index, from: path.from, to: path.to } };
  }
  if (path === undefined) {
    const args = { keyword: "include", missing: "a path in quotes", form };
    return { finding: raise(missingValue, lineSpan(line, index), args) };
  }
  const [from, to] = [(path.kind === "text" ? extra : path)?.from, line.atoms.at(-1)?.to];
  const span = { ...lineSpan(line, index), from: from ?? path.from, to: to ?? path.to };
  const args = { keyword: "include", written: quoted(line, span.from, span.to), form };
  return { finding: raise(extraValue, span, args) };
}
