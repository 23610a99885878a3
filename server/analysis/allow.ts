// Comments that silence a finding where it stands: `# allow CODE: reason`.
import { lexLine } from "../../grammar/lexer.ts";
import { Comment } from "../../grammar/tokens.ts";
import type { Line } from "../../grammar/tree.ts";
import { type Finding, type Fix, raise } from "../../shared/finding.ts";
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

/** More codes than one are read, so that it can be said that a comment silences one. */
const form = /^#\s*allow\s+([A-Za-z0-9-]+(?:\s*,\s*[A-Za-z0-9-]+)*)\s*(?::.*)?$/;

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
  const byLine = Map.groupBy(allows, ({ line }) => line);
  const kept = findings.filter((finding) => {
    const allow = byLine.get(finding.span.line)?.find(({ code }) => code === finding.code);
    if (allow === undefined) return true;
    allow.used = true;
    return false;
  });
  for (const { code, span, used } of allows) {
    const several = code.split(/\s*,\s*/);
    if (several.length > 1) {
      // Without a code among them they are words of a sentence.
      if (!several.some((each) => codes.includes(each))) continue;
      const fix = oneEach(lines[span.line]?.text ?? "", several, span);
      kept.push(raise(unknownAllow, span, { written: code, nearest: "" }, { fix }));
    } else if (!codes.includes(code)) {
      const [near] = nearest(code, codes);
      const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
      kept.push(raise(unknownAllow, span, { written: code, nearest: near ?? "" }, { fix }));
    } else if (!used) kept.push(raise(unusedAllow, span, { code }));
  }
  return kept;
}

/** A comment for each of some codes, where the comment has its line for itself. */
function oneEach(text: string, codes: readonly string[], { line, from, to }: Span): Fix | undefined {
  if (!isOnlyComment(text)) return undefined;
  const comments = codes.map((code) => text.slice(0, from) + code + text.slice(to));
  return {
    title: "Write a comment for each",
    edits: [{ span: { line, from: 0, to: text.length }, text: comments.join("\n") }],
  };
}

function readAllows(lines: readonly Line[]): Allow[] {
  const allows: Allow[] = [];
  // From the last line up, since many comments may stand above the line that they all speak of.
  const known = new Map<number, number>();
  for (let index = lines.length - 1; index >= 0; index--) {
    const found = allowedCode(lines[index]?.text ?? "");
    if (found === undefined) continue;
    const { code, from, to } = found;
    const line = spokenOf(lines, index, known);
    known.set(index, line);
    allows.push({ code, span: { line: index, from, to }, line, used: false });
  }
  return allows.reverse();
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

/** The line that the comment of a line speaks of; `known` has it for some lines below. */
export function spokenOf(
  lines: readonly Line[],
  index: number,
  known: ReadonlyMap<number, number> = new Map(),
): number {
  let spoken = index;
  while (isOnlyComment(lines[spoken]?.text ?? "")) spoken = known.get(spoken + 1) ?? spoken + 1;
  return spoken;
}

function isOnlyComment(text: string): boolean {
  return text.trimStart().startsWith("#");
}

/** Whether a comment can silence a finding: not what is wrong with such comments themselves. */
export function isAllowable(code: string): boolean {
  return code !== unknownAllow.code && code !== unusedAllow.code;
}
