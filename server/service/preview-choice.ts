// Which runs a preview shows, or which trace, ladder or map, and what else could be chosen.
import { type Choice, choiceSchema, type PreviewParams } from "../../shared/messages/preview.ts";
import { runName } from "../../shared/render/run-name.ts";
import type { Analysis, ComputedRun, SettledRun } from "../analysis/project.ts";
import type { BlockPicture } from "./block-pictures.ts";
import { blockAt } from "./line-at.ts";
import { runAt } from "./row-at.ts";

export interface Offer {
  readonly choice: Choice;
  readonly label: string;
}

/**
 * What can be chosen in a record: what the cursor stands in first, then all runs, stages of several cylinders, each run, and
 * its traces, ladders and maps.
 */
export function picks({ settled }: Analysis, pictures: readonly BlockPicture[]): readonly Offer[] {
  if (settled.length + pictures.length < 2) return [];
  const runs = settled.map(({ placed: { entity } }): Offer => {
    const name = runName(entity);
    const label = entity.stage === undefined ? name : `${name} (${entity.stage})`;
    return { choice: { kind: "run", id: entity.id }, label };
  });
  const stages = [...cylindersByStage(settled)].map(
    ([stage, count]): Offer => ({ choice: { kind: "stage", stage }, label: `${count} cylinders, ${stage}` }),
  );
  const offers: readonly Offer[] = [
    { choice: { kind: "cursor" }, label: pictures.length === 0 ? "run at the cursor" : "at the cursor" },
    ...(settled.length < 2
      ? []
      : [{ choice: { kind: "all" }, label: `all ${settled.length} runs` } as const]),
    ...stages,
    ...runs,
    ...pictures.map(({ id }): Offer => ({ choice: { kind: "block", id }, label: id })),
  ];
  // Names may be longer than a message takes.
  return offers.filter(({ choice }) => choiceSchema.safeParse(choice).success);
}

type Wish = Pick<PreviewParams, "choice" | "line" | "shown">;

/** The trace, ladder or map that is chosen, or that the cursor stands in where it decides; what is on show stays where it stands in nothing. */
export function chosenPicture(
  analysis: Analysis,
  pictures: readonly BlockPicture[],
  { choice, line, shown }: Wish,
): BlockPicture | undefined {
  if (choice.kind === "block") return pictures.find(({ id }) => id === choice.id);
  if (choice.kind !== "cursor") return undefined;
  const start = line === null ? undefined : blockAt(analysis.scope.file.outline, line)?.start;
  const under = pictures.find((picture) => picture.start === start);
  if (under !== undefined || (line !== null && runAt(analysis, line) !== undefined)) return under;
  return pictures.find(({ name }) => name === shown);
}

/** The runs of a choice; what is chosen but no longer there is taken for the run of the cursor. */
export function chosenRuns(analysis: Analysis, { choice, line, shown }: Wish): readonly ComputedRun[] {
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
