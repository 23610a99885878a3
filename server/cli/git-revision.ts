// Files as they stood at a revision. Git is called with a list of arguments, never through a shell.
import { execFileSync } from "node:child_process";
import { dirname, relative } from "node:path";
import type { FileRead } from "../analysis/files.ts";
import { findUp, LARGEST_FILE, slashed } from "../disk/disk-files.ts";

/** A state of a repository. */
export interface Revision {
  /** A file of the repository, by its absolute path, as it stood then. */
  readonly read: (path: string) => FileRead;
}

/** The revision of the repository that a path lies in; why not, where there is none. Nothing of the record is run. */
export function openRevision(name: string, path: string): Revision | { readonly problem: string } {
  const top = findUp(dirname(path), ".git");
  if (top === undefined) return { problem: "it lies in no git repository" };
  const verified = git(top, ["rev-parse", "--verify", "--quiet", "--end-of-options", `${name}^{commit}`]);
  if ("problem" in verified) return { problem: verified.isMissing ? "git is not installed" : NO_REVISION };
  const commit = verified.bytes.toString("utf8").trim();
  return {
    read: (wanted) => {
      const inside = slashed(relative(top, wanted));
      if (inside.startsWith("../")) return { problem: "it lies outside the repository" };
      const found = git(top, ["cat-file", "blob", `${commit}:${inside}`]);
      if ("problem" in found) return { problem: "it was not there at that revision" };
      try {
        return { text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(found.bytes) };
      } catch {
        return { problem: "it is not UTF-8 text" };
      }
    },
  };
}

const NO_REVISION = "there is no such revision";

function git(
  folder: string,
  args: readonly string[],
): { readonly bytes: Buffer } | { readonly problem: string; readonly isMissing: boolean } {
  try {
    // Replacements, a pager or an alias of the user change nothing of what a revision holds.
    const bytes = execFileSync("git", ["--no-replace-objects", "--no-pager", ...args], {
      cwd: folder,
      maxBuffer: LARGEST_FILE,
      stdio: ["ignore", "pipe", "ignore"],
    });
    return { bytes };
  } catch (error) {
    const code = typeof error === "object" && error !== null && "code" in error ? error.code : undefined;
    return { problem: String(error), isMissing: code === "ENOENT" };
  }
}
