// What may stand between quotes: files to include, and stages that were named before.

import { folderOf, relativePath } from "../../shared/text/path.ts";
import { escapedText } from "../../shared/text/quoted-text.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Offer } from "./offer.ts";

/** `typed` is the line up to the cursor; `paths` are those of the workspace's records. */
export function textOffers(
  scope: Scope,
  line: number,
  typed: string,
  paths: readonly string[],
): readonly Offer[] {
  if (/^\s*include\s+"[^"]*$/.test(typed)) return includeOffers(scope, paths);
  if (/^\s*stage\s+"[^"]*$/.test(typed)) {
    return stagesIn(scope, line).map((stage) => ({
      label: stage,
      insert: escapedText(stage),
      kind: "value",
      detail: "stage",
    }));
  }
  return [];
}

/** The stages of the file and its includes but for the one on the line itself, each once, the file's own first. */
export function stagesIn({ file, files }: Scope, line: number): readonly string[] {
  const stages = files
    .flatMap(({ runs }) => runs)
    .filter(({ entity: { origin }, start, path }) => {
      const stated = origin.lines.get("stage");
      return stated !== undefined && (path !== file.path || start + stated.line !== line);
    })
    .flatMap(({ entity }) => entity.stage ?? []);
  return [...new Set(stages)];
}

/** Files that are not included yet, the nearest first. */
function includeOffers({ file, includes }: Scope, paths: readonly string[]): readonly Offer[] {
  const folder = folderOf(file.path);
  const known = new Set(includes.map(({ path }) => path));
  return paths
    .filter((path) => path !== file.path && !known.has(path))
    .map((path) => relativePath(folder, path))
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
    .map((path) => ({ label: path, insert: path, kind: "file", detail: "" }));
}
