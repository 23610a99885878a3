// The runs that a file's own runs are to be laid beside: their baselines, and the same stage on another bench.
import { isSamePortOnTwoBenches } from "../../shared/calc/two-benches.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Analysis, SettledRun } from "./project.ts";

/** A run of the file and one that is laid beside it, which may stand in another file. */
export interface RunPair {
  readonly as: "baseline" | "bench";
  readonly own: SettledRun;
  readonly other: SettledRun;
  /** The file of the other one. */
  readonly analysis: Analysis;
  /** All that could stand in the other's place: the other one, and earlier runs on its bench. */
  readonly others: readonly VisibleRun[];
}

/** The results of a pair, and where the other run stands. */
export interface ComputedPair {
  readonly as: RunPair["as"];
  readonly own: RunResult;
  readonly other: RunResult;
  readonly place: { readonly path: string; readonly start: number; readonly isOwnFile: boolean };
}

/** A run with the analysis of its own file. */
export interface VisibleRun {
  readonly run: SettledRun;
  readonly analysis: Analysis;
}

/**
 * Every run that states a baseline with it, and every run with one of the same port, stage, cylinder and direction on each
 * other bench, the last of them in the file, else in what it includes. Two runs of the file make two pairs of the latter kind.
 */
export function runPairs(analysis: Analysis): readonly RunPair[] {
  return [...baselinePairs(analysis), ...benchPairs(analysis)];
}

/** The run that a run states as its baseline, with the analysis of its own file; `undefined` where there is none. */
export function baselineRun(
  analysis: Analysis,
  { setup }: Pick<SettledRun, "setup">,
): VisibleRun | undefined {
  const id = setup.run.baseline?.id;
  const placed = id === undefined ? undefined : analysis.scope.locate("run", id);
  if (placed === undefined || placed.entity === setup.run) return undefined;
  const owner = ownerOf(analysis, placed.path);
  const run = owner?.settled.find(({ placed: { entity } }) => entity === placed.entity);
  return owner && run && { run, analysis: owner };
}

function ownerOf(analysis: Analysis, path: string): Analysis | undefined {
  return path === analysis.scope.file.path ? analysis : analysis.included(path);
}

function baselinePairs(analysis: Analysis): readonly RunPair[] {
  const based = analysis.settled.filter(({ setup: { run } }) => run.baseline !== undefined);
  return based.flatMap((own): readonly RunPair[] => {
    const other = baselineRun(analysis, own);
    return other === undefined ? [] : pair("baseline", own, [other]);
  });
}

function benchPairs(analysis: Analysis): readonly RunPair[] {
  const staged = analysis.settled.filter(({ setup: { run } }) => run.stage !== undefined);
  if (staged.length === 0) return [];
  const { file, files } = analysis.scope;
  const included = files.flatMap(({ path, runs }) => {
    const owner = path === file.path || runs.length === 0 ? undefined : analysis.included(path);
    return owner?.settled.map((run): VisibleRun => ({ run, analysis: owner })) ?? [];
  });
  const own = staged.map((run): VisibleRun => ({ run, analysis }));
  const byPort = Map.groupBy([...own.reverse(), ...included.reverse()], ({ run }) => keyOf(run));
  const byBench = new Map(
    [...byPort].map(([key, group]) => [key, Map.groupBy(group, ({ run }) => run.setup.bench?.id)]),
  );
  return staged.flatMap((run) => {
    const benches = byBench.get(keyOf(run)) ?? new Map<string | undefined, readonly VisibleRun[]>();
    // Most stages are read on one bench.
    if (benches.size < 2) return [];
    return [...benches.values()].flatMap((fellows) =>
      pair(
        "bench",
        run,
        fellows.filter((other) => isSamePortOnTwoBenches(run.setup, other.run.setup)),
      ),
    );
  });
}

function keyOf({ setup: { port, run } }: SettledRun): string {
  return JSON.stringify([port?.id, run.stage, run.cylinder]);
}

/** The first of the others stands beside the run; there is no pair without any. */
function pair(as: RunPair["as"], own: SettledRun, others: readonly VisibleRun[]): readonly RunPair[] {
  const [first] = others;
  return first === undefined ? [] : [{ as, own, other: first.run, analysis: first.analysis, others }];
}
