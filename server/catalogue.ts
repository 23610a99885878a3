// Every kind of finding by its code, and the words of a finding.
import { GRAMMAR_FINDINGS } from "../grammar/findings/index.ts";
import type { Finding, FindingArgs, FindingKind, Severity } from "../shared/finding.ts";
import { unknownAllow } from "./analysis/findings/unknown-allow.ts";
import { unusedAllow } from "./analysis/findings/unused-allow.ts";
import { RULES } from "./rules/index.ts";

const byCode = new Map<string, FindingKind<never>>();
for (const kind of [...GRAMMAR_FINDINGS, unknownAllow, unusedAllow, ...RULES]) {
  if (!byCode.has(kind.code)) byCode.set(kind.code, kind);
}

/** All kinds: those of reading, of the set-up, of the point, of the port. A code stands once. */
export const KINDS: readonly FindingKind<never>[] = [...byCode.values()];

/** All codes in the order of the catalogue. */
export const CODES: readonly string[] = [...byCode.keys()];

/** The kind of that code. */
export function findKind(code: string): FindingKind<never> | undefined {
  return byCode.get(code);
}

/** What a finding says. */
export interface Words {
  readonly message: string;
  readonly help: string;
  readonly severity: Severity;
}

/** The words of a finding, made by its kind. */
export function wordsOf(finding: Finding): Words {
  const kind = byCode.get(finding.code);
  if (kind === undefined) return { message: finding.code, help: "", severity: "error" };
  // A finding's arguments are those of its kind: `raise` has seen to that.
  const args = finding.args as FindingArgs as never;
  return { message: kind.message(args), help: kind.help(args), severity: finding.severity ?? kind.severity };
}
