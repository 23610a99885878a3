// Which runs a preview shows, and what else could be chosen.
import type { Choice, PreviewParams } from "../../shared/messages/preview.ts";
import type { Analysis, ComputedRun, SettledRun } from "../analysis/project.ts";
import { runAt } from "./row-at.ts";

export interface Offer {
  readonly choice: Choice;
  readonly label: string;
}

/** What can be chosen in a record: the run of the cursor first, then its runs, its stages of several cylinders, and all. */
export function picks({ settled }: Analysis): readonly Offer[] {
  if (settled.length < 2) return [];
  const runs = settled.map(({ placed: { entity } }): Offer => {
    const label = entity.stage === undefined ? entity.id : `${entity.id} (${entity.stage})`;
    return { choice: { kind: "run", id: entity.id }, label };
  });
  const stages = [...cylindersByStage(settled)].map(
    ([stage, count]): Offer => ({ choice: { kind: "stage", stage }, label: `${count} cylinders, ${stage}` }),
  );
  return [
    { choice: { kind: "cursor" }, label: "run at the cursor" },
    { choice: { kind: "all" }, label: `all ${settled.length} runs` },
    ...stages,
    ...runs,
  ];
}

/** The runs of a choice; what is chosen but no longer there is taken for the run of the cursor. */
export function chosenRuns(
  analysis: Analysis,
  { choice, line, shown }: Pick<PreviewParams, "choice" | "line" | "shown">,
): readonly ComputedRun[] {
  const { settled } = analysis;
  const computed = (runs: readonly SettledRun[]): readonly ComputedRun[] =>
    runs.map((run) => ({ placed: run.placed, result: analysis.compute(run) }));
  const found = settled.filter(({ placed: { entity } }) => {
    if (choice.kind === "run") return entity.id === choice.id;
    if (choice.kind === "stage") return entity.stage === choice.stage && entity.cylinder !== undefined;
    return choice.kind === "all";
  });
  if (found.length > 0) return computed(choice.kind === "run" ? found.slice(0, 1) : found);
  const run =
    (line === null ? undefined : runAt(analysis, line)) ??
    settled.find(({ placed }) => placed.entity.id === shown) ??
    settled[0];
  return run === undefined ? [] : computed([run]);
}

/** Stages that runs on more than one cylinder name, with how many. */
function cylindersByStage(settled: readonly SettledRun[]): ReadonlyMap<string, number> {
  const cylinders = new Map<string, Set<number>>();
  for (const { placed } of settled) {
    const { stage, cylinder } = placed.entity;
    if (stage === undefined || cylinder === undefined) continue;
    cylinders.set(stage, (cylinders.get(stage) ?? new Set()).add(cylinder));
  }
  return new Map(
    [...cylinders].flatMap(([stage, set]) => (set.size > 1 ? [[stage, set.size] as const] : [])),
  );
}
