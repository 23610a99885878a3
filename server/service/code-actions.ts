// Mends for the findings at a place: each by itself, all of a kind, or silenced with a reason.
import type { Fix } from "../../shared/finding.ts";
import type { Edit } from "../../shared/text/edit.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Judged } from "./findings.ts";
import { mendOf } from "./mends.ts";

export interface CodeAction {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** The finding that it mends; missing for one that mends many. */
  readonly mends?: Judged;
  readonly isPreferred: boolean;
}

/** The actions for the findings that touch the lines from `first` to `last`. */
export function codeActions(
  analysis: Analysis,
  findings: readonly Judged[],
  first: number,
  last: number,
): readonly CodeAction[] {
  const here = findings.filter(({ finding }) => finding.span.line >= first && finding.span.line <= last);
  const mends = here.flatMap((judged): CodeAction[] => {
    const fix = fixOf(analysis, judged);
    return fix === undefined ? [] : [{ ...fix, mends: judged, isPreferred: true }];
  });
  const kinds = [...new Set(here.map(({ finding }) => finding.code))];
  const all = kinds.flatMap((code) => {
    const same = findings.filter(({ finding }) => finding.code === code);
    const edits = joined(same.flatMap((judged) => fixOf(analysis, judged) ?? []));
    return edits.length < 2 ? [] : [{ title: `Mend all ${code} in this file`, edits, isPreferred: false }];
  });
  const allow = here.map((judged) => allowAction(analysis, judged));
  return [...mends, ...all, ...allow];
}

/** Every mend of a file at once. */
export function mendAll(analysis: Analysis, findings: readonly Judged[]): readonly Edit[] {
  return joined(findings.flatMap((judged) => fixOf(analysis, judged) ?? []));
}

/** What the finding itself offers, else what its kind is mended by. */
function fixOf(analysis: Analysis, { finding }: Judged): Fix | undefined {
  return finding.fix ?? mendOf(analysis, finding);
}

function allowAction({ scope }: Analysis, judged: Judged): CodeAction {
  const { code, span } = judged.finding;
  const text = scope.file.outline.lines[span.line]?.text ?? "";
  const indent = text.slice(0, text.length - text.trimStart().length);
  const edit = { span: { line: span.line, from: 0, to: 0 }, text: `${indent}# allow ${code}: \n` };
  return { title: `Allow ${code} here`, edits: [edit], mends: judged, isPreferred: false };
}

/** The edits of several fixes; of two that overlap the first. */
function joined(fixes: readonly Fix[]): readonly Edit[] {
  const taken: Edit[] = [];
  for (const edit of fixes.flatMap(({ edits }) => edits)) {
    const overlaps = taken.some(
      ({ span }) => span.line === edit.span.line && span.from < edit.span.to && edit.span.from < span.to,
    );
    const isSame = taken.some(({ span, text }) => sameSpan(span, edit.span) && text === edit.text);
    if (!overlaps && !isSame) taken.push(edit);
  }
  return taken;
}

function sameSpan(a: Edit["span"], b: Edit["span"]): boolean {
  return a.line === b.line && a.from === b.from && a.to === b.to;
}
