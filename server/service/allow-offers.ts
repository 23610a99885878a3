// What may stand behind `# allow`: the codes of findings, those of the line that the comment speaks of first.
import { isAllowable, spokenOf } from "../analysis/allow.ts";
import type { Analysis } from "../analysis/project.ts";
import { KINDS } from "../catalogue.ts";
import type { Completion } from "./completion.ts";
import type { Judged } from "./findings.ts";
import { kindText } from "./kind-text.ts";
import type { Position } from "./position.ts";

/** `comment` is what stands in front of the cursor, from the `#` on. */
export function allowOffers(
  analysis: Analysis,
  findings: () => readonly Judged[],
  position: Position,
  comment: string,
): readonly Completion[] {
  const { lines } = analysis.scope.file.outline;
  const rest = lines[position.line]?.text.slice(position.column) ?? "";
  const typed = /^#\s*(?:(allow)\s+)?([A-Za-z0-9-]*)$/.exec(comment);
  if (typed === null) return [];
  const [, allow, word = ""] = typed;
  const tail = /^[A-Za-z0-9-]*/.exec(rest)?.[0] ?? "";
  const place = { from: position.column - word.length, to: position.column + tail.length };
  if (allow === undefined) return "allow".startsWith(word) ? [{ ...ALLOW, ...place }] : [];
  const hasReason = /^\s*:/.test(rest.slice(tail.length));
  const spoken = spokenOf(lines, position.line);
  const nearest = nearestByCode(findings(), spoken);
  const distance = (code: string): number => nearest.get(code)?.distance ?? Number.MAX_SAFE_INTEGER;
  return KINDS.filter(({ code }) => isAllowable(code))
    .sort((a, b) => distance(a.code) - distance(b.code))
    .map((kind) => {
      const { code, what } = kind;
      const near = nearest.get(code);
      return {
        ...place,
        label: code,
        insert: hasReason ? code : `${code}: `,
        kind: "choice",
        detail: near?.distance === 0 ? near.message : what,
        documentation: kindText(kind),
      };
    });
}

const ALLOW = {
  label: "allow",
  insert: "allow ",
  kind: "keyword",
  detail: "allow CODE: reason",
  documentation: "Silences a finding on this line, or on the next one where the comment stands alone.",
} as const;

/** The finding of each code that is nearest to a line. */
function nearestByCode(
  findings: readonly Judged[],
  line: number,
): ReadonlyMap<string, { readonly distance: number; readonly message: string }> {
  const nearest = new Map<string, { distance: number; message: string }>();
  for (const { finding, message } of findings) {
    const distance = Math.abs(finding.span.line - line);
    const known = nearest.get(finding.code);
    if (known === undefined || distance < known.distance) nearest.set(finding.code, { distance, message });
  }
  return nearest;
}
