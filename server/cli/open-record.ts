// Opens the one record that a command is about.
import { resolve } from "node:path";
import { slashed } from "../disk/disk-files.ts";
import type { Checked, Service } from "../service/service.ts";
import { STDIN } from "./find-files.ts";
import type { Io } from "./io.ts";
import { shownPath } from "./shown-path.ts";
import { complain } from "./subcommand.ts";
import { openWorkspace, stdinPath, stdinText } from "./workspace.ts";

export interface OpenRecord extends Checked {
  /** As it is printed. */
  readonly shown: string;
  readonly service: Service;
}

/** The file's record in the light of its includes and settings; `undefined` after having said why there is none. */
export async function openRecord(file: string, io: Io): Promise<OpenRecord | undefined> {
  const isStdin = file === STDIN;
  const path = isStdin ? stdinPath(io.cwd, undefined) : slashed(resolve(io.cwd, file));
  const texts = isStdin ? [[path, await stdinText(io)] as const] : [];
  const { service, readSettings } = openWorkspace(io.cwd, new Map(texts));
  const [unsettled] = readSettings([path]);
  const checked = service.check(path);
  const shown = shownPath(io.cwd, path);
  const problem = "problem" in checked ? `${shown}: ${checked.problem}` : unsettled;
  if (problem !== undefined) complain(io, problem);
  if ("problem" in checked || unsettled !== undefined) return undefined;
  return { analysis: checked.analysis, findings: checked.findings, shown, service };
}
