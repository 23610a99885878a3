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
  const allows: Allow[] = [];
  lines.forEach((line, index) => {
    if (!line.text.includes("allow")) return;
    const comment = lexLine(line.text).find((token) => token.tokenType === Comment);
    const code = comment && form.exec(comment.image)?.[1];
    if (comment === undefined || code === undefined) return;
    const from = comment.startOffset + comment.image.indexOf(code, comment.image.indexOf("allow") + 5);
    const span = { line: index, from, to: from + code.length };
    const own = line.text.slice(0, comment.startOffset).trim() === "";
    allows.push({ code, span, line: own ? nextSpoken(lines, index) : index, used: false });
  });
  return allows;
}

function nextSpoken(lines: readonly Line[], index: number): number {
  let next = index + 1;
  while (next < lines.length && lines[next]?.kind === "blank" && lines[next]?.text.trim().startsWith("#"))
    next++;
  return next;
}
