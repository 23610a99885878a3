// The product without a front: everything that editor and command can ask of a workspace.

import type { Files } from "../analysis/files.ts";
import { type Analysis, createProject } from "../analysis/project.ts";
import type { Config } from "./config.ts";
import { findingsOf, type Judged } from "./findings.ts";

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
  const checked = new WeakMap<Analysis, { readonly weights: Config; readonly checked: Checked }>();
  return {
    check: (path) => {
      const analysis = project.analyse(path);
      if ("problem" in analysis) return analysis;
      const weights = config(path);
      const known = checked.get(analysis);
      if (known?.weights === weights) return known.checked;
      const made = checkedFile(analysis, weights);
      checked.set(analysis, { weights, checked: made });
      return made;
    },
    changed: project.changed,
  };
}

function checkedFile(analysis: Analysis, config: Config): Checked {
  let findings: readonly Judged[] | undefined;
  return {
    analysis,
    get findings() {
      findings ??= findingsOf(analysis, config);
      return findings;
    },
  };
}
