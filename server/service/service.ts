// The product without a front: everything that editor and command can ask of a workspace.

import type { Files } from "../analysis/files.ts";
import { type Analysis, createProject } from "../analysis/project.ts";
import type { Config } from "./config.ts";
import { type FindingMemory, findingMemory, findingsOf, type Judged } from "./findings.ts";

/** What the service needs of the platform that it runs on. */
export interface Environment {
  readonly files: Files;
  /** The settings that hold for a file. */
  readonly config: (path: string) => Config;
  /** Whether to keep what was read and computed for the next time, as an editor needs it; true unless said. */
  readonly retain?: boolean;
}

/** A file that was read, and is judged once when its findings are first asked for. */
export interface Checked {
  readonly analysis: Analysis;
  readonly findings: readonly Judged[];
}

export interface Service {
  /** A file with its results and findings; why not, where it cannot be read. */
  readonly check: (path: string) => Checked | { readonly problem: string };
  /** Says that files have changed. */
  readonly changed: () => void;
}

export function createService({ files, config, retain = true }: Environment): Service {
  const project = createProject(files, retain);
  const memory = retain ? findingMemory() : undefined;
  const checked = retain
    ? new WeakMap<Analysis, { readonly weights: Config; readonly checked: Checked }>()
    : undefined;
  return {
    check: (path) => {
      const analysis = project.analyse(path);
      if ("problem" in analysis) return analysis;
      const weights = config(path);
      const known = checked?.get(analysis);
      if (known?.weights === weights) return known.checked;
      const made = new LazyChecked(analysis, weights, memory);
      checked?.set(analysis, { weights, checked: made });
      return made;
    },
    changed: project.changed,
  };
}

/** A class, since an object with a getter of its own is kept by the engine long after its file is done with. */
class LazyChecked implements Checked {
  readonly analysis: Analysis;
  readonly #config: Config;
  readonly #memory: FindingMemory | undefined;
  #findings: readonly Judged[] | undefined = undefined;

  constructor(analysis: Analysis, config: Config, memory: FindingMemory | undefined) {
    this.analysis = analysis;
    this.#config = config;
    this.#memory = memory;
  }

  get findings(): readonly Judged[] {
    this.#findings ??= findingsOf(this.analysis, this.#config, this.#memory);
    return this.#findings;
  }
}
