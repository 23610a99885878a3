// A name that stands for nothing the file can see.
import { columnWords } from "../../shared/calc/column-values.ts";
import type { NamedKind } from "../../shared/model/model.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { nearest } from "../../shared/quantity/nearest.ts";
import type { Scope } from "../analysis/scope.ts";
import { namesIn } from "../analysis/source-file.ts";
import { cellSpan } from "./places.ts";
import { type FileInput, type Report, rule } from "./rule.ts";
import { unknownNames, unreadInclude } from "./unread-names.ts";

/** `bench` names the one that a range is wanted of; `known` are its ranges. */
type Args = { kind: string; id: string; nearest: string; bench?: string; known?: string };

export const nameNotFound = rule<Args>({
  code: "name-not-found",
  severity: "error",
  message: ({ kind, id, bench }) =>
    bench === undefined
      ? `there is no ${kind} '${id}' in this file or in what it includes`
      : `bench '${bench}' has no range '${id}'`,
  help: ({ nearest, kind, id, bench, known }) => {
    if (nearest !== "") return `did you mean ${nearest}?`;
    if (bench === undefined) return `define the ${kind}, or include the file that does`;
    return known === ""
      ? `write it into the bench, such as: range ${id} 450 cfm at 28 inH2O`
      : `take one that it has: ${known}`;
  },
  what: "A line uses a name that neither the file nor anything it includes defines. Where an include could not be read nothing is known of such names; its own finding tells of them.",
  why: "Without what the name stands for its values are missing, and results would stand on defaults.",
  bad: `headnote 1
head a114
  engine     road-engine
`,
  good: `headnote 1
engine road-engine
  bore       4.030 in
head a114
  engine     road-engine
`,
  check: checkUses,
  checkRun: checkRanges,
});

function checkUses({ scope }: FileInput, report: Report<Args>): void {
  // A file that could not be read may define what nothing else does.
  if (unreadInclude(scope) !== undefined) return;
  for (const { kind, id, span } of unknownNames(scope)) {
    const [near] = nearest(id, namesOf(scope, kind));
    const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
    report(span, { kind, id, nearest: near ?? "" }, { fix });
  }
}

function namesOf(scope: Scope, kind: NamedKind): readonly string[] {
  return scope.files.flatMap((file) => [...namesIn(file, kind)]);
}

/** Ranges are named by their bench. */
function checkRanges({ setup, written }: RunResult, report: Report<Args>): void {
  const { bench, run } = setup;
  const rangeOf = columnWords(run.table, "range");
  if (bench === undefined || rangeOf === undefined) return;
  const names = bench.ranges.map((range) => range.name);
  const known = names.join(", ");
  for (const row of written) {
    const id = rangeOf(row);
    if (id === undefined || row.void !== undefined || names.includes(id)) continue;
    const span = cellSpan(run, row, "range");
    const [near] = nearest(id, names);
    const fix = near === undefined ? undefined : { title: `Write ${near}`, edits: [{ span, text: near }] };
    report(span, { kind: "range", id, nearest: near ?? "", bench: bench.id, known }, { fix });
  }
}
