// One round of checking: finds the files, judges them, prints the report.
import { splitLines } from "../../shared/text/lines.ts";
import { wantsColour } from "./colour.ts";
import { FINE, FOUND, UNUSABLE } from "./exit-code.ts";
import { findFiles } from "./find-files.ts";
import type { Io } from "./io.ts";
import { type Outcome, reportedFinding, summaryOf } from "./outcome.ts";
import { REPORTERS } from "./reporters/index.ts";
import { shownPath } from "./shown-path.ts";
import { type Call, complain, textOption } from "./subcommand.ts";
import type { Workspace } from "./workspace.ts";

/** Severities, the heaviest first. */
export const LEVELS: readonly string[] = ["error", "warning", "hint"];

/** What a round came to, and what it looked at. Paths are absolute. */
export interface Round {
  readonly code: number;
  readonly folders: readonly string[];
  /** Those judged and those that they include. */
  readonly files: readonly string[];
}

/** `stdin` is where standard input is taken to lie, if it is one of the paths. */
export async function checkOnce(
  paths: readonly string[],
  stdin: string | undefined,
  { service, readSettings }: Workspace,
  call: Call,
  io: Io,
): Promise<Round> {
  const found = await findFiles(paths, io.cwd);
  const files = stdin === undefined ? found.files : [stdin, ...found.files.filter((file) => file !== stdin)];
  const problems = [...found.problems, ...readSettings(files)];
  const read: string[] = [];
  const texts = new Map<string, string>();
  const seen = new Set<string>(files);
  const findings = files.flatMap((path) => {
    const checked = service.check(path);
    if ("problem" in checked) {
      problems.push(`${shownPath(io.cwd, path)}: ${checked.problem}`);
      return [];
    }
    const { file, files: visible } = checked.analysis.scope;
    read.push(path);
    for (const each of visible) seen.add(each.path);
    if (checked.findings.length === 0) return [];
    texts.set(shownPath(io.cwd, path), file.text);
    return checked.findings.map((judged) => reportedFinding(io.cwd, path, judged));
  });
  const failing = LEVELS.slice(0, LEVELS.indexOf(textOption(call, "failOn") ?? "") + 1);
  const fails: Outcome["fails"] = ({ severity }) => failing.includes(severity);
  const report = REPORTERS[textOption(call, "format") ?? ""];
  const shown = () => read.map((path) => shownPath(io.cwd, path));
  const outcome = { files: shown, findings, summary: summaryOf(read.length, findings), fails };
  const style = { isColoured: findings.length > 0 && wantsColour(textOption(call, "color"), io) };
  io.out(report?.({ ...outcome, lineOf: lineReader(texts) }, style) ?? "");
  for (const problem of problems) complain(io, problem);
  const code = problems.length > 0 ? UNUSABLE : findings.some(fails) ? FOUND : FINE;
  return { code, folders: found.folders, files: [...seen] };
}

/** Gives lines of texts by file and number from 1; a text is cut only when one of its lines is asked for. */
function lineReader(texts: ReadonlyMap<string, string>): Outcome["lineOf"] {
  const cut = new Map<string, readonly string[]>();
  return (file, line) => {
    const lines = cut.get(file) ?? splitLines(texts.get(file) ?? "");
    cut.set(file, lines);
    return lines[line - 1] ?? "";
  };
}
