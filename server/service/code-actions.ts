// Mends for the findings at a place: each by itself, all of a kind, or silenced with a reason.
import type { Fix } from "../../shared/finding.ts";
import type { Edit } from "../../shared/text/edit.ts";
import { isAllowable } from "../analysis/allow.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Judged } from "./findings.ts";
import { mendOf } from "./mends.ts";
import type { Position } from "./position.ts";
import { voidRow } from "./proposals/void-row.ts";
import { asksOthers, proposalOf } from "./proposals.ts";

export interface CodeAction {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** The finding that it mends; missing for one that mends many. */
  readonly mends?: Judged;
  readonly isPreferred: boolean;
}

/** The findings that a selection touches, or else all those of its lines: a cursor need not be brought to the very word. */
export function findingsAt(findings: readonly Judged[], start: Position, end: Position): readonly Judged[] {
  const near = findings.filter(({ finding: { span } }) => span.line >= start.line && span.line <= end.line);
  const touched = near.filter(
    ({ finding: { span } }) =>
      !(span.line === start.line && span.to < start.column) &&
      !(span.line === end.line && span.from > end.column),
  );
  return touched.length > 0 ? touched : near;
}

/** Whether the actions for some findings depend on the other records of the workspace. */
export function needsOthers(here: readonly Judged[]): boolean {
  return here.some(({ finding }) => asksOthers(finding));
}

/** The actions for some of a file's findings; `others` are the records of the workspace. */
export function codeActions(
  analysis: Analysis,
  findings: readonly Judged[],
  here: readonly Judged[],
  others: readonly Scope[] = [],
): readonly CodeAction[] {
  const mends = here.flatMap((judged): CodeAction[] => {
    const fix = fixOf(analysis, judged);
    const offered = fix ?? proposalOf(analysis, judged.finding, others);
    return offered === undefined ? [] : [{ ...offered, mends: judged, isPreferred: fix !== undefined }];
  });
  const aside = here.flatMap((judged): CodeAction[] => {
    const offered = voidRow(analysis, judged);
    return offered === undefined ? [] : [{ ...offered, mends: judged, isPreferred: false }];
  });
  const mended = here.filter((judged) => fixOf(analysis, judged) !== undefined);
  const kinds = [...new Set(mended.map(({ finding }) => finding.code))];
  const all = kinds.flatMap((code) => {
    const same = findings.filter(({ finding }) => finding.code === code);
    const edits = joined(same.flatMap((judged) => fixOf(analysis, judged) ?? []));
    return edits.length < 2 ? [] : [{ title: `Mend all ${code} in this file`, edits, isPreferred: false }];
  });
  const allow = here
    .filter(({ finding }) => isAllowable(finding.code))
    .map((judged) => allowAction(analysis, judged));
  // What is sure stands before what is proposed.
  const sure = mends.toSorted((a, b) => Number(b.isPreferred) - Number(a.isPreferred));
  return [...sure, ...all, ...aside, ...allow];
}

/** Every mend of a file at once; proposals are left to the user, since a file may be mended unseen whenever it is saved. */
export function mendAll(analysis: Analysis, findings: readonly Judged[]): readonly Edit[] {
  return joined(findings.flatMap((judged) => fixOf(analysis, judged) ?? []));
}

/** What the finding itself offers, else what its kind is mended by; never a proposal. */
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

/** The edits of several fixes; of two that overlap the first, so that no fix is applied by halves. */
function joined(fixes: readonly Fix[]): readonly Edit[] {
  const byLine = new Map<number, readonly Edit[]>();
  const on = ({ span }: Edit): readonly Edit[] => byLine.get(span.line) ?? [];
  for (const { edits } of fixes) {
    const added = edits.filter((edit) => !on(edit).some((taken) => isSame(taken, edit)));
    if (added.some((edit) => on(edit).some((taken) => overlaps(taken, edit)))) continue;
    for (const edit of added) byLine.set(edit.span.line, [...on(edit), edit]);
  }
  return [...byLine.values()].flat();
}

function overlaps({ span: a }: Edit, { span: b }: Edit): boolean {
  return a.from < b.to && b.from < a.to;
}

function isSame(a: Edit, b: Edit): boolean {
  return a.span.from === b.span.from && a.span.to === b.span.to && a.text === b.text;
}
