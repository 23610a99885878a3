// How a path is printed: from the current folder, with `/`, the same on every machine.
import { relative } from "node:path";
import { slashed } from "../disk/disk-files.ts";

/** An absolute path as it is printed in a folder; `.` for the folder itself. */
export function shownPath(cwd: string, path: string): string {
  // Nearly every file lies in the folder, and `relative` goes through both paths letter by letter.
  const folder = `${slashed(cwd)}/`;
  return path.startsWith(folder) ? path.slice(folder.length) : slashed(relative(cwd, path)) || ".";
}
