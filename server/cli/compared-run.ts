// One side of a comparison: `FILE[#run]`, or `REV:FILE[#run]` for the file as git has it at a revision.
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { nearest } from "../../shared/quantity/nearest.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { slashed } from "../disk/disk-files.ts";
import type { Judged } from "../service/findings.ts";
import { openRevision } from "./git-revision.ts";
import type { Io } from "./io.ts";
import { shownPath } from "./shown-path.ts";
import { complain } from "./subcommand.ts";
import { openWorkspace } from "./workspace.ts";

/** A run that was found, and how its side was written. */
export interface ComparedRun {
  readonly run: ComputedRun;
  readonly findings: readonly Judged[];
  /** As it is printed. */
  readonly file: string;
  readonly revision: string | undefined;
}

interface Side {
  readonly revision: string | undefined;
  readonly path: string;
  readonly run: string | undefined;
}

/** The run of one side; `undefined` after having said why there is none. */
export async function openCompared(written: string, io: Io): Promise<ComparedRun | undefined> {
  const { revision, path, run } = sideOf(written, io.cwd);
  const shown = shownPath(io.cwd, path);
  const state = revision === undefined ? undefined : await openRevision(revision, path);
  if (state !== undefined && "problem" in state) {
    complain(io, `${written}: ${state.problem}`);
    return undefined;
  }
  const { service, readSettings } = openWorkspace(io.cwd, new Map(), state?.read);
  const [unsettled] = readSettings([path]);
  const checked = service.check(path);
  if ("problem" in checked || unsettled !== undefined) {
    complain(io, "problem" in checked ? `${written}: ${checked.problem}` : (unsettled ?? ""));
    return undefined;
  }
  const found = pick(checked.analysis.runs, run);
  if ("problem" in found) {
    complain(io, `${written}: ${found.problem}`);
    return undefined;
  }
  return { run: found, findings: checked.findings, file: shown, revision };
}

/** A name that is a file as it stands is one; else a `:` ends a revision, and a `#` begins a run. */
function sideOf(written: string, cwd: string): Side {
  const absolute = (path: string) => slashed(resolve(cwd, path));
  const whole = absolute(written);
  if (existsSync(whole)) return { revision: undefined, path: whole, run: undefined };
  const hash = written.lastIndexOf("#");
  const file = hash < 0 ? written : written.slice(0, hash);
  const run = hash < 0 ? undefined : written.slice(hash + 1);
  // One letter before a colon is a drive.
  const colon = existsSync(absolute(file)) ? -1 : file.indexOf(":");
  if (colon < 2) return { revision: undefined, path: absolute(file), run };
  return { revision: file.slice(0, colon), path: absolute(file.slice(colon + 1)), run };
}

function pick(
  runs: readonly ComputedRun[],
  id: string | undefined,
): ComputedRun | { readonly problem: string } {
  const ids = runs.map(({ placed }) => placed.entity.id);
  if (id === undefined) {
    const [only] = runs;
    if (only === undefined) return { problem: "there is no run in it" };
    if (runs.length === 1) return only;
    return { problem: `say which run behind a #: ${ids.join(", ")}` };
  }
  const found = runs.find(({ placed }) => placed.entity.id === id);
  if (found !== undefined) return found;
  const [near] = nearest(id, ids);
  return { problem: `there is no run '${id}' in it${near === undefined ? "" : `; did you mean '${near}'?`}` };
}
