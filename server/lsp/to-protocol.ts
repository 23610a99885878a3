// Turns own data into what the protocol writes; the only place that knows both.
import {
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Range,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { Severity } from "../../shared/finding.ts";
import { type Edit, editEnd } from "../../shared/text/edit.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Judged } from "../service/findings.ts";
import { uriOf } from "./uris.ts";

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  hint: DiagnosticSeverity.Information,
};

export function toRange({ line, from, to }: Span): Range {
  return { start: { line, character: from }, end: { line, character: to } };
}

export function toTextEdit(edit: Edit): TextEdit {
  const { span, text } = edit;
  const { line, column } = editEnd(edit);
  const range = { start: { line: span.line, character: span.from }, end: { line, character: column } };
  return { range, newText: text };
}

export function toWorkspaceEdit(edits: ReadonlyMap<string, readonly Edit[]>): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const [path, list] of edits) changes[uriOf(path)] = list.map(toTextEdit);
  return { changes };
}

/** A finding as an editor shows it: what is wrong, and behind it what to do. */
export function toDiagnostic(path: string, { finding, severity, message, help }: Judged): Diagnostic {
  const { code, span, related } = finding;
  return {
    range: toRange(span),
    severity: SEVERITIES[severity],
    code,
    source: "headnote",
    message: help === "" ? message : `${message}\n${help}`,
    ...(code === "unused-allow" && { tags: [DiagnosticTag.Unnecessary] }),
    ...(related.length > 0 && {
      relatedInformation: related.map(({ file, span: place, message: said }) => ({
        location: { uri: uriOf(file ?? path), range: toRange(place) },
        message: said,
      })),
    }),
  };
}
