// The run that a run is compared with, wherever the file can see it.
import type { RunResult } from "../../shared/model/result.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Placed } from "../analysis/source-file.ts";

/** A baseline, and where its block begins. */
export interface Baseline {
  readonly placed: Placed;
  readonly result: RunResult;
}

export type BaselineOf = (result: RunResult) => Baseline | undefined;

/** Finds baselines as their own files have them; `analyses` are those of the file's includes, by path. */
export function baselines(analysis: Analysis, analyses: ReadonlyMap<string, Analysis>): BaselineOf {
  const { scope } = analysis;
  return ({ setup }) => {
    const id = setup.run.baseline?.id;
    const placed = id === undefined ? undefined : scope.locate("run", id);
    if (placed === undefined || placed.entity === setup.run) return undefined;
    const owner = placed.path === scope.file.path ? analysis : analyses.get(placed.path);
    const settled = owner?.settled.find((each) => each.placed.entity === placed.entity);
    return owner && settled && { placed, result: owner.compute(settled) };
  };
}
