// Files as they stood at a revision. Git is called with a list of arguments, never through a shell.
import { dirname, relative } from "node:path";
import type { FileRead } from "../analysis/files.ts";
import { findUp, LARGEST_FILE, slashed } from "../disk/disk-files.ts";

/** A state of a repository. */
export interface Revision {
  /** A file of the repository, by its absolute path, as it stood then. */
  readonly read: (path: string) => FileRead;
}

/** The revision of the repository that a path lies in; why not, where there is none. Nothing of the record is run. */
export async function openRevision(
  name: string,
  path: string,
): Promise<Revision | { readonly problem: string }> {
  const top = findUp(dirname(path), ".git");
  if (top === undefined) return { problem: "it lies in no git repository" };
  const git = await gitIn(top);
  const verified = git(["rev-parse", "--verify", "--quiet", "--end-of-options", `${name}^{commit}`]);
  if ("problem" in verified) return { problem: verified.isMissing ? "git is not installed" : NO_REVISION };
  const commit = verified.bytes.toString("utf8").trim();
  return {
    read: (wanted) => {
      const inside = slashed(relative(top, wanted));
      if (inside.startsWith("../")) return { problem: "it lies outside the repository" };
      const found = git(["cat-file", "blob", `${commit}:${inside}`]);
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

type Git = (
  args: readonly string[],
) => { readonly bytes: Buffer } | { readonly problem: string; readonly isMissing: boolean };

/** Git in a folder. What starts programs is loaded here: no other command needs it. */
async function gitIn(folder: string): Promise<Git> {
  const { execFileSync } = await import("node:child_process");
  return (args) => {
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
  };
}
