// The reference of a kind of finding: what it is and why it matters.
import type { FindingKind } from "../../shared/finding.ts";

/** Markdown; a kind's words are our own and need no escaping. */
export function kindText({ code, what, why }: FindingKind<never>): string {
  return `**${code}** — ${what}\n\n${why}`;
}
