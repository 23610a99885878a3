// Comments that silence a finding where it stands: `# allow CODE: reason`.
import { lexLine } from "../../grammar/lexer.ts";
import { Comment } from "../../grammar/tokens.ts";
import type { Line } from "../../grammar/tree.ts";
import { type Finding, raise } from "../../shared/finding.ts";
import { nearest } from "../../shared/quantity/nearest.ts";
import type { Span } from "../../shared/text/span.ts";
import { unknownAllow } from "./findings/unknown-allow.ts";
import { unusedAllow } from "./findings/unused-allow.ts";

interface Allow {
  readonly code: string;
  /** The code's place in the comment. */
  readonly span: Span;
  /** The line whose findings it silences. */
  readonly line: number;
  used: boolean;
}

const form = /^#\s*allow\s+([A-Za-z0-9-]+)\s*(?::.*)?$/;

/**
 * The findings that no comment silences, and what is wrong with the comments themselves. A comment on a line of its own
 * speaks of the next line that is not one; a comment behind something speaks of its own line.
 */
export function applyAllows(
  lines: readonly Line[],
  findings: readonly Finding[],
  codes: readonly string[],
): Finding[] {
  const allows = readAllows(lines);
  if (allows.length === 0) return [...findings];
  const kept = findings.filter((finding) => {
    const allow = allows.find(({ code, line }) => code === finding.code && line === finding.span.line);
    if (allow === undefined) return true;
    allow.used = true;
    return false;
  });
  for (const { code, span, used } of allows) {
    if (!codes.includes(code)) {
      const [near] = nearest(code, codes);
      const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
      kept.push(raise(unknownAllow, span, { written: code, nearest: near ?? "" }, { fix }));
    } else if (!used) kept.push(raise(unusedAllow, span, { code }));
  }
  return kept;
}

function readAllows(lines: readonly Line[]): Allow[] {
  return lines.flatMap(({ text }, index) => {
    const found = allowedCode(text);
    if (found === undefined) return [];
    const { code, from, to } = found;
    return [{ code, span: { line: index, from, to }, line: spokenOf(lines, index), used: false }];
  });
}

/** A code that a comment silences, and its place in the line. */
export interface AllowedCode {
  readonly code: string;
  readonly from: number;
  readonly to: number;
}

/** The code behind `# allow` on a line; `undefined` where there is no such comment. */
export function allowedCode(text: string): AllowedCode | undefined {
  if (!text.includes("allow")) return undefined;
  const comment = lexLine(text).find((token) => token.tokenType === Comment);
  const code = comment && form.exec(comment.image)?.[1];
  if (comment === undefined || code === undefined) return undefined;
  const from = comment.startOffset + comment.image.indexOf(code, comment.image.indexOf("allow") + 5);
  return { code, from, to: from + code.length };
}

/** The line that a comment speaks of. */
export function spokenOf(lines: readonly Line[], index: number): number {
  const isComment = (line: number): boolean => lines[line]?.text.trimStart().startsWith("#") === true;
  let spoken = index;
  while (isComment(spoken)) spoken++;
  return spoken;
}

/** Whether a comment can silence a finding: not what is wrong with such comments themselves. */
export function isAllowable(code: string): boolean {
  return code !== unknownAllow.code && code !== unusedAllow.code;
}
