// Leaves out what a repository ignores: every .gitignore from its top down to the file has its say.
import { existsSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import ignore, { type Ignore } from "ignore";
import { findUp, readText, slashed } from "../disk/disk-files.ts";

/**
 * Whether a file is ignored; paths are absolute. Outside a repository the .gitignore files from `folder` downward count.
 * The nearest file that speaks of a path decides, as in git; what cannot be read ignores nothing.
 */
export function gitIgnore(folder: string): (path: string) => boolean {
  const top = findUp(folder, ".git") ?? folder;
  const known = new Map<string, Ignore | undefined>();
  const rulesOf = (at: string): Ignore | undefined => {
    if (!known.has(at)) known.set(at, readRules(join(at, ".gitignore")));
    return known.get(at);
  };
  return (path) => {
    for (let at = dirname(path); ; at = dirname(at)) {
      const verdict = rulesOf(at)?.test(slashed(relative(at, path)));
      if (verdict?.ignored) return true;
      if (verdict?.unignored || at === top || dirname(at) === at) return false;
    }
  };
}

function readRules(path: string): Ignore | undefined {
  const read = existsSync(path) ? readText(path) : undefined;
  return read === undefined || "problem" in read ? undefined : ignore().add(read.text);
}
