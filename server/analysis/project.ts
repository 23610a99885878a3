// Reads and computes the files of a workspace, each once until it changes.
import { blockMemory, NO_MEMORY } from "../../grammar/lower-block.ts";
import { evaluateRun, repeatabilities } from "../../shared/calc/evaluate.ts";
import { hasOwnConditions, settler } from "../../shared/calc/setup.ts";
import { type Made, remade } from "../../shared/difference.ts";
import type { Run, Session } from "../../shared/model/model.ts";
import type { Repeatability, RunResult } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import type { Files } from "./files.ts";
import { type ComputedLadder, laddersOf } from "./ladders.ts";
import { ownerAmong } from "./owning-run.ts";
import { type Scope, scopeOf } from "./scope.ts";
import { type Placed, type SourceFile, sourceFile } from "./source-file.ts";
import { type ComputedTrace, tracesOf } from "./traces.ts";

/** A run of a file with what it stands on. */
export interface SettledRun {
  readonly placed: Placed<Run>;
  readonly setup: Setup;
  /** It has readings and states no condition itself: it stands on the same things as all such runs of its file. */
  readonly isPlain: boolean;
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
  /** The traces and ladders of the file whose runs are known, in order. */
  readonly traces: readonly ComputedTrace[];
  readonly ladders: readonly ComputedLadder[];
  /** A file that this one includes, directly or not, by its path; `undefined` where it cannot be read. */
  readonly included: (path: string) => Analysis | undefined;
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
  const settlings = new Map<string, Settling>();
  const blocks = retain ? blockMemory() : NO_MEMORY;
  const memo = retain ? new WeakMap<Run, Remembered>() : undefined;

  const read = (path: string): SourceFile | { readonly problem: string } => {
    const found = files.read(path);
    if ("problem" in found) return found;
    const before = versions.get(path);
    const file = before?.text === found.text ? before : sourceFile(path, found.text, blocks, before);
    if (retain) versions.set(path, file);
    return file;
  };
  const include = (path: string): SourceFile | { readonly problem: string } => {
    const file = included.get(path) ?? read(path);
    included.set(path, file);
    return file;
  };
  const analyse: Project["analyse"] = (path) => {
    const done = analyses.get(path);
    if (done !== undefined) return done;
    const file = included.get(path) ?? read(path);
    if ("problem" in file) return file;
    const scope = scopeOf(file, files, include);
    const settling = settleRuns(scope, memo, settlings.get(path));
    if (retain) settlings.set(path, settling);
    const analysis = analyseFile(scope, settling, memo, files, analyse);
    if (retain) analyses.set(path, analysis);
    return analysis;
  };
  return {
    analyse,
    changed: () => {
      included.clear();
      analyses.clear();
    },
  };
}

/** What is remembered of a run: while what it was made from is the same, so is the rest. */
interface Remembered {
  readonly session: Session | undefined;
  readonly definitions: Definitions;
  readonly setup: Setup;
  readonly repeatability?: Repeatability;
  readonly result?: RunResult;
}

/** The things that names can stand for in a scope; the same list while none of them has changed. */
type Definitions = readonly Placed["entity"][];

/** The runs of a file with what they stand on, and what that was settled from. */
interface Settling extends Made<Placed<Run>, SettledRun> {
  readonly session: Session | undefined;
  readonly definitions: Definitions;
}

function settleRuns(
  scope: Scope,
  memo: WeakMap<Run, Remembered> | undefined,
  earlier: Settling | undefined,
): Settling {
  const { runs } = scope.file;
  const session = scope.file.session?.entity;
  const definitions = memo === undefined ? [] : definitionsOf(scope, earlier?.definitions);
  const isSame = earlier?.session === session && earlier?.definitions === definitions;
  const settle = settler(session, scope.find);
  const settled = remade(runs, isSame ? earlier : undefined, (placed): SettledRun => {
    const run = placed.entity;
    const isPlain = run.table !== undefined && run.table.rows.length > 0 && !hasOwnConditions(run);
    const known = memo?.get(run);
    if (known !== undefined && known.session === session && known.definitions === definitions) {
      return { placed, setup: known.setup, isPlain };
    }
    const setup = settle(run);
    memo?.set(run, { session, definitions, setup });
    return { placed, setup, isPlain };
  });
  return { of: runs, to: settled, session, definitions };
}

function analyseFile(
  scope: Scope,
  { to: settled, session, definitions }: Settling,
  memo: WeakMap<Run, Remembered> | undefined,
  files: Files,
  analyse: Project["analyse"],
): Analysis {
  let pooled: Analysis["repeatability"] | undefined;
  const repeatability = (setup: Setup): Repeatability => {
    pooled ??= repeatabilities(settled.map((run) => run.setup));
    return pooled(setup);
  };
  const compute = ({ setup }: SettledRun): RunResult => {
    const s = repeatability(setup);
    const known = memo?.get(setup.run);
    if (known?.result !== undefined && known.setup === setup && isAlike(known.repeatability, s))
      return known.result;
    const result = evaluateRun(setup, s);
    memo?.set(setup.run, { session, definitions, setup, repeatability: s, result });
    return result;
  };
  const included = (path: string): Analysis | undefined => {
    const other = analyse(path);
    return "problem" in other ? undefined : other;
  };
  const owner = ownerAmong(scope, settled, (path) => included(path)?.settled ?? []);
  return new LazyAnalysis(scope, settled, repeatability, compute, included, {
    traces: () => tracesOf(scope.file, owner, files),
    ladders: () => laddersOf(scope.file, owner, repeatability),
  });
}

/** What only some files have, computed when it is asked for. */
interface Extras {
  readonly traces: () => readonly ComputedTrace[];
  readonly ladders: () => readonly ComputedLadder[];
}

/** A class, since an object with a getter of its own is kept by the engine long after its file is done with. */
class LazyAnalysis implements Analysis {
  readonly scope: Scope;
  readonly settled: readonly SettledRun[];
  readonly repeatability: Analysis["repeatability"];
  readonly compute: Analysis["compute"];
  readonly included: Analysis["included"];
  readonly #extras: Extras;
  #runs: readonly ComputedRun[] | undefined = undefined;
  #traces: readonly ComputedTrace[] | undefined = undefined;
  #ladders: readonly ComputedLadder[] | undefined = undefined;

  constructor(
    scope: Scope,
    settled: readonly SettledRun[],
    repeatability: Analysis["repeatability"],
    compute: Analysis["compute"],
    included: Analysis["included"],
    extras: Extras,
  ) {
    this.scope = scope;
    this.settled = settled;
    this.repeatability = repeatability;
    this.compute = compute;
    this.included = included;
    this.#extras = extras;
  }

  get runs(): readonly ComputedRun[] {
    this.#runs ??= this.settled.map((run) => ({ placed: run.placed, result: this.compute(run) }));
    return this.#runs;
  }

  get traces(): readonly ComputedTrace[] {
    this.#traces ??= this.#extras.traces();
    return this.#traces;
  }

  get ladders(): readonly ComputedLadder[] {
    this.#ladders ??= this.#extras.ladders();
    return this.#ladders;
  }
}

function definitionsOf({ files }: Scope, before: Definitions | undefined): Definitions {
  const now = files.flatMap(({ placed, names }) =>
    // Runs define names too, but no set-up is settled from another run.
    [...names.first].flatMap(([kind, named]) =>
      kind === "run" ? [] : [...named.values()].flatMap((index) => placed[index]?.entity ?? []),
    ),
  );
  const isSame = before?.length === now.length && now.every((entity, index) => entity === before[index]);
  return isSame ? before : now;
}

function isAlike(a: Repeatability | undefined, b: Repeatability): boolean {
  return a?.deviation === b.deviation && a.source === b.source && a.degreesOfFreedom === b.degreesOfFreedom;
}
