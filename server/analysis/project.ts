// Reads and computes the files of a workspace, each once until it changes.
import { evaluateRun, repeatabilities } from "../../shared/calc/evaluate.ts";
import { settle } from "../../shared/calc/setup.ts";
import type { Run } from "../../shared/model/model.ts";
import type { Repeatability, RunResult } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import type { Files } from "./files.ts";
import { type Scope, scopeOf } from "./scope.ts";
import { type Placed, type SourceFile, sourceFile } from "./source-file.ts";

/** A run of a file with what it stands on. */
export interface SettledRun {
  readonly placed: Placed<Run>;
  readonly setup: Setup;
}

/** A run of a file with its result. */
export interface ComputedRun {
  readonly placed: Placed<Run>;
  readonly result: RunResult;
}

/** One file in the light of all that it includes. Results are computed when they are first asked for. */
export interface Analysis {
  readonly scope: Scope;
  /** The runs of the file itself, in order. */
  readonly settled: readonly SettledRun[];
  readonly runs: readonly ComputedRun[];
  readonly repeatability: (setup: Setup) => Repeatability;
  /** The result of one run of the file. */
  readonly compute: (run: SettledRun) => RunResult;
}

export interface Project {
  /** A file as it stands now; why not, where it cannot be read. */
  readonly analyse: (path: string) => Analysis | { readonly problem: string };
  /** Says that files have changed; all that depends on them is computed anew when it is next asked for. */
  readonly changed: () => void;
}

/**
 * The files of one workspace. Nothing is read before it is asked for. `retain` keeps what was read and computed for the
 * next time, as an editor needs it; without it only included files are kept, and a thousand records pass through the
 * memory of one.
 */
export function createProject(files: Files, retain = true): Project {
  const included = new Map<string, SourceFile | { readonly problem: string }>();
  const versions = new Map<string, SourceFile>();
  const analyses = new Map<string, Analysis>();
  const memo = retain ? new WeakMap<Run, Remembered>() : undefined;

  const read = (path: string): SourceFile | { readonly problem: string } => {
    const found = files.read(path);
    if ("problem" in found) return found;
    const before = versions.get(path);
    const file = before?.text === found.text ? before : sourceFile(path, found.text, before);
    if (retain) versions.set(path, file);
    return file;
  };
  const include = (path: string): SourceFile | { readonly problem: string } => {
    const file = included.get(path) ?? read(path);
    included.set(path, file);
    return file;
  };
  return {
    analyse: (path) => {
      const done = analyses.get(path);
      if (done !== undefined) return done;
      const file = included.get(path) ?? read(path);
      if ("problem" in file) return file;
      const analysis = analyseFile(scopeOf(file, files, include), memo);
      if (retain) analyses.set(path, analysis);
      return analysis;
    },
    changed: () => {
      included.clear();
      analyses.clear();
    },
  };
}

/** A run's result and what it was computed from: while these are the same things, so is the result. */
interface Remembered {
  readonly setup: Setup;
  readonly repeatability: Repeatability;
  readonly result: RunResult;
}

function analyseFile(scope: Scope, memo: WeakMap<Run, Remembered> | undefined): Analysis {
  const { session, runs } = scope.file;
  const settled = runs.map((placed) => ({
    placed,
    setup: settle(placed.entity, session?.entity, scope.find),
  }));
  const repeatability = repeatabilities(settled.map(({ setup }) => setup));
  const compute = ({ setup }: SettledRun): RunResult => {
    const s = repeatability(setup);
    const before = memo?.get(setup.run);
    if (before !== undefined && isSame(before.setup, setup) && isAlike(before.repeatability, s))
      return before.result;
    const result = evaluateRun(setup, s);
    memo?.set(setup.run, { setup, repeatability: s, result });
    return result;
  };
  let computed: readonly ComputedRun[] | undefined;
  return {
    scope,
    settled,
    repeatability,
    compute,
    get runs() {
      computed ??= settled.map((run) => ({ placed: run.placed, result: compute(run) }));
      return computed;
    },
  };
}

/** Everything else in a set-up is settled from these. */
function isSame(a: Setup, b: Setup): boolean {
  return (
    a.session === b.session &&
    a.bench === b.bench &&
    a.port === b.port &&
    a.head === b.head &&
    a.engine === b.engine &&
    a.cam === b.cam
  );
}

function isAlike(a: Repeatability, b: Repeatability): boolean {
  return a.deviation === b.deviation && a.source === b.source && a.degreesOfFreedom === b.degreesOfFreedom;
}
