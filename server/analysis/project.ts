// Reads and computes the files of a workspace, each once until it changes.
import { evaluateRuns } from "../../shared/calc/evaluate.ts";
import { settle } from "../../shared/calc/setup.ts";
import type { Run } from "../../shared/model/model.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Files } from "./files.ts";
import { type Scope, scopeOf } from "./scope.ts";
import { type Placed, type SourceFile, sourceFile } from "./source-file.ts";

/** A run of a file with its result. */
export interface ComputedRun {
  readonly placed: Placed<Run>;
  readonly result: RunResult;
}

/** One file in the light of all that it includes. */
export interface Analysis {
  readonly scope: Scope;
  /** The runs of the file itself, in order. */
  readonly runs: readonly ComputedRun[];
}

export interface Project {
  /** A file as it stands now; why not, where it cannot be read. */
  readonly analyse: (path: string) => Analysis | { readonly problem: string };
  /** Says that files have changed; all that depends on them is computed anew when it is next asked for. */
  readonly changed: () => void;
}

/** The files of one workspace. Nothing is read before it is asked for. */
export function createProject(files: Files): Project {
  const known = new Map<string, SourceFile | { readonly problem: string }>();
  const before = new Map<string, SourceFile>();
  const analyses = new Map<string, Analysis>();

  const open = (path: string): SourceFile | { readonly problem: string } => {
    const opened = known.get(path);
    if (opened !== undefined) return opened;
    const read = files.read(path);
    if ("problem" in read) {
      known.set(path, read);
      return read;
    }
    const previous = before.get(path);
    const file = previous?.text === read.text ? previous : sourceFile(path, read.text, previous);
    known.set(path, file);
    before.set(path, file);
    return file;
  };

  const analyse = (path: string): Analysis | { readonly problem: string } => {
    const done = analyses.get(path);
    if (done !== undefined) return done;
    const file = open(path);
    if ("problem" in file) return file;
    const scope = scopeOf(file, files, open);
    const setups = file.runs.map(({ entity }) => settle(entity, file.session?.entity, scope.find));
    const results = evaluateRuns(setups);
    const runs = file.runs.flatMap((placed, index) => {
      const result = results[index];
      return result === undefined ? [] : [{ placed, result }];
    });
    const analysis = { scope, runs };
    analyses.set(path, analysis);
    return analysis;
  };

  const changed = (): void => {
    known.clear();
    analyses.clear();
  };

  return { analyse, changed };
}
