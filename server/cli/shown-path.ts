// How a path is printed: from the current folder, with `/`, the same on every machine.
import { relative } from "node:path";
import { slashed } from "../disk/disk-files.ts";

/** An absolute path as it is printed in a folder; `.` for the folder itself. */
export function shownPath(cwd: string, path: string): string {
  return slashed(relative(cwd, path)) || ".";
}
