// Checks again whenever something changes that could change what was found.
import { existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import { isWithin } from "../../shared/text/path.ts";
import { problemOf, slashed } from "../disk/disk-files.ts";
import type { Round } from "./check-once.ts";
import { UNUSABLE } from "./exit-code.ts";
import type { Io, WatchedFolder } from "./io.ts";
import { complain } from "./subcommand.ts";

/** Editors and version control change several files at once; all of them are one change. */
const DEBOUNCE_MS = 100;
/** Clears a terminal, its scrollback too, and goes to its first line. */
const CLEAR = "\u001B[2J\u001B[3J\u001B[H";

/** Runs rounds until `io.ended`; gives the exit code of the last one. `forget` drops what was read of the disk. */
export async function watchAndRepeat(
  once: () => Promise<Round>,
  forget: () => void,
  io: Io,
): Promise<number> {
  let round = await once();
  let hasChanged = false;
  let wake = () => {};
  let stop = () => {};
  const changed = (path: string): void => {
    if (!matters(path, round)) return;
    hasChanged = true;
    wake();
  };
  for (;;) {
    const stopBefore = stop;
    try {
      stop = io.watch(foldersOf(round), changed);
    } catch (error) {
      complain(io, `the folders cannot be watched: ${problemOf(error)}`);
      return UNUSABLE;
    } finally {
      stopBefore();
    }
    const { length } = round.files;
    io.err(`watching ${length} ${length === 1 ? "file" : "files"} for changes\n`);
    const change = new Promise<void>((resolve) => {
      wake = resolve;
    });
    if (!hasChanged && (await Promise.race([change, io.ended.then(() => "ended")])) === "ended") {
      stop();
      return round.code;
    }
    await new Promise((resolve) => setTimeout(resolve, DEBOUNCE_MS));
    hasChanged = false;
    forget();
    if (io.isTerminal()) io.out(CLEAR);
    round = await once();
  }
}

function matters(path: string, { files }: Round): boolean {
  return /\.headnote$|^headnote\.json$|^\.gitignore$/.test(basename(path)) || files.includes(path);
}

/** Folders that were named with all below them, and those of single files. */
function foldersOf({ folders, files }: Round): readonly WatchedFolder[] {
  const recursive = folders.map((path) => ({ path, recursive: true }));
  const single = [...new Set(files.map((file) => dirname(file)))].filter(
    (path) => existsSync(path) && !folders.some((folder) => isBelow(path, folder)),
  );
  return [...recursive, ...single.map((path) => ({ path, recursive: false }))];
}

function isBelow(path: string, folder: string): boolean {
  return isWithin(slashed(path), slashed(folder));
}
