// `headnote format`: lays records out in their canonical form.

import { conflictMarker } from "../../../grammar/findings/conflict-marker.ts";
import { format as formatText } from "../../../grammar/format.ts";
import { isConflictMark } from "../../../grammar/line-kind.ts";
import { splitLines } from "../../../shared/text/lines.ts";
import { printable } from "../../../shared/text/printable.ts";
import { FINE, FOUND, UNUSABLE } from "../exit-code.ts";
import { findFiles, STDIN } from "../find-files.ts";
import type { Io } from "../io.ts";
import { decodeExactly, readExactly } from "../read-bytes.ts";
import { shownPath } from "../shown-path.ts";
import { complain, flagOption, type Subcommand } from "../subcommand.ts";
import { replaceFile } from "../write-file.ts";

export const format: Subcommand = {
  name: "format",
  args: "[path...]",
  summary: "lay records out in their canonical form; only blanks and line ends change",
  examples: [
    ["headnote format", "all records in this folder and below"],
    ["headnote format --check", "only say which ones would change (exit code 1)"],
    ["headnote format - < draft.headnote", "from standard input to standard output"],
  ],
  options: [{ flags: "--check", about: "write nothing; list the files that would change" }],
  run: async (call, io) => {
    const paths = call.args.length === 0 ? ["."] : call.args;
    const isCheck = flagOption(call, "check");
    if (!paths.includes(STDIN)) return formatFiles(paths, isCheck, io);
    if (paths.length === 1) return formatStdin(isCheck, io);
    complain(io, "standard input is formatted alone, not together with files");
    return UNUSABLE;
  },
};

async function formatStdin(isCheck: boolean, io: Io): Promise<number> {
  const read = decodeExactly(await io.stdin());
  if ("problem" in read) {
    complain(io, `<stdin>: ${read.problem}`);
    return UNUSABLE;
  }
  const formatted = formatText(read.text);
  if (formatted === undefined) reportConflict("<stdin>", read.text, io);
  if (!isCheck) io.out(formatted ?? read.text);
  return formatted === undefined || (isCheck && formatted !== read.text) ? FOUND : FINE;
}

async function formatFiles(paths: readonly string[], isCheck: boolean, io: Io): Promise<number> {
  const { files, problems } = await findFiles(paths, io.cwd);
  const failed = [...problems];
  let changed = 0;
  let conflicts = 0;
  for (const path of files) {
    const shown = shownPath(io.cwd, path);
    const read = readExactly(path);
    if ("problem" in read) {
      failed.push(`${shown}: ${read.problem}`);
      continue;
    }
    const formatted = formatText(read.text);
    if (formatted === undefined) {
      conflicts++;
      reportConflict(shown, read.text, io);
    } else if (formatted !== read.text) {
      const problem = isCheck ? undefined : replaceFile(path, new TextEncoder().encode(formatted), io);
      if (problem !== undefined) {
        failed.push(`${shown}: ${problem}`);
        continue;
      }
      changed++;
      io.out(`${printable(shown)}\n`);
    }
  }
  for (const problem of failed) complain(io, problem);
  io.err(
    `${changed} of ${files.length} ${files.length === 1 ? "file" : "files"} ${isCheck ? "would change" : "changed"}\n`,
  );
  if (failed.length > 0) return UNUSABLE;
  return conflicts > 0 || (isCheck && changed > 0) ? FOUND : FINE;
}

function reportConflict(shown: string, text: string, io: Io): void {
  const line = splitLines(text).findIndex(isConflictMark) + 1;
  const { code, severity, message, help } = conflictMarker;
  io.err(`${printable(shown)}:${line}:1: ${severity}[${code}]: ${message({})}\n  help: ${help({})}\n`);
}
