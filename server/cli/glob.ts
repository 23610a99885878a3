// What a pattern matches. Its packages are loaded only for a path that is neither file nor folder.
import { glob, isDynamicPattern } from "tinyglobby";

const NEVER = ["**/node_modules/**", "**/.git/**"];

/** Absolute paths of files; `undefined` for a path that is no pattern. */
export async function matching(pattern: string, cwd: string): Promise<readonly string[] | undefined> {
  if (!isDynamicPattern(pattern)) return undefined;
  return glob(pattern, {
    cwd,
    ignore: NEVER,
    absolute: true,
    expandDirectories: false,
    followSymbolicLinks: false,
  });
}
