// Turns the paths of a command line into files: a file, a folder's records, a glob, or standard input.
import { statSync } from "node:fs";
import { resolve } from "node:path";
import { problemOf, slashed } from "../disk/disk-files.ts";
import { filesBelow } from "../disk/files-below.ts";
import { gitIgnore } from "./git-ignore.ts";
import { shownPath } from "./shown-path.ts";

/** The path that stands for standard input. */
export const STDIN = "-";

export interface FoundFiles {
  /** Absolute, each once, in the order of the paths and by name within each. */
  readonly files: readonly string[];
  /** The folders among the paths, absolute. */
  readonly folders: readonly string[];
  /** Whether standard input is one of the paths. */
  readonly stdin: boolean;
  /** What is wrong with a path, in sentences. */
  readonly problems: readonly string[];
}

/** Files named one by one are taken as they are; those of folders and globs only where no .gitignore leaves them out. */
export async function findFiles(paths: readonly string[], cwd: string): Promise<FoundFiles> {
  const files = new Set<string>();
  const folders: string[] = [];
  const problems: string[] = [];
  for (const path of paths) {
    if (path === STDIN) continue;
    const absolute = resolve(cwd, path);
    const kind = kindOf(absolute);
    if (kind === "file") files.add(slashed(absolute));
    else if (kind === "folder") {
      folders.push(absolute);
      const records = kept(filesBelow(slashed(absolute), ".headnote"), absolute);
      if (records.length === 0) problems.push(`${shownPath(cwd, absolute)}: there is no record in it`);
      for (const record of records) files.add(record);
    } else {
      const matched = kind === problemOf({ code: "ENOENT" }) ? await globbed(path, cwd) : undefined;
      if (matched === undefined) problems.push(`${slashed(path)}: ${kind}`);
      else if (matched.length === 0) problems.push(`${slashed(path)}: nothing matches it`);
      for (const match of matched ?? []) files.add(match);
    }
  }
  return { files: [...files], folders, stdin: paths.includes(STDIN), problems };
}

/** `file`, `folder`, or why it is neither. */
function kindOf(path: string): string {
  if (path.includes("\0")) return "no file has such a name";
  try {
    return statSync(path).isDirectory() ? "folder" : "file";
  } catch (error) {
    return problemOf(error);
  }
}

/** The files that a pattern matches; `undefined` for a path that is no pattern. */
async function globbed(path: string, cwd: string): Promise<readonly string[] | undefined> {
  const { matching } = await import("./glob.ts");
  const found = await matching(slashed(path), cwd);
  return found && kept(found, cwd);
}

/** The paths that no .gitignore leaves out, in the order of their names. */
function kept(paths: readonly string[], folder: string): readonly string[] {
  const isIgnored = gitIgnore(folder);
  return paths.filter((path) => !isIgnored(path)).sort();
}
