// What one file can see: itself and everything that it includes, directly or not.
import type { Include } from "../../grammar/include-line.ts";
import type { Find } from "../../shared/calc/setup.ts";
import type { Entities, NamedKind } from "../../shared/model/model.ts";
import { folderOf, isWithin, resolvePath } from "../../shared/text/path.ts";
import type { Files } from "./files.ts";
import { defined, type Placed, type SourceFile } from "./source-file.ts";

/** What an include of the file itself came to. */
export interface ResolvedInclude {
  readonly include: Include;
  readonly path: string;
  /** `missing` could not be read, `outside` leaves the workspace, `cycle` leads back to the file. */
  readonly problem?: "missing" | "outside" | "cycle";
  /** Why it could not be read, or the way of a cycle. */
  readonly detail?: string;
}

export interface Scope {
  readonly file: SourceFile;
  /** The file and all it includes, each once, the file first. */
  readonly files: readonly SourceFile[];
  readonly includes: readonly ResolvedInclude[];
  readonly find: Find;
  /** Where the thing of that kind and name stands. */
  readonly locate: (kind: NamedKind, id: string) => Placed | undefined;
}

/** Follows the includes of a file. A cycle ends where it closes; nothing is read twice. */
export function scopeOf(
  file: SourceFile,
  files: Files,
  open: (path: string) => SourceFile | { readonly problem: string },
): Scope {
  const seen = new Map<string, SourceFile>([[file.path, file]]);
  const includes = file.outline.includes.map((include): ResolvedInclude => {
    const path = resolvePath(folderOf(file.path), include.path);
    if (!isWithin(path, files.root(file.path)) || include.path.startsWith("/")) {
      return { include, path, problem: "outside" };
    }
    if (path === file.path) return { include, path, problem: "cycle", detail: include.path };
    const opened = open(path);
    if ("problem" in opened) return { include, path, problem: "missing", detail: opened.problem };
    const way = follow(opened, file.path, seen, files, open, [include.path]);
    return way === undefined ? { include, path } : { include, path, problem: "cycle", detail: way };
  });
  const visible = [...seen.values()];
  const locate = (kind: NamedKind, id: string): Placed | undefined => {
    for (const visited of visible) {
      const found = defined(visited, kind, id);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  const find = <K extends NamedKind>(kind: K, id: string): Entities[K] | undefined => {
    const entity = locate(kind, id)?.entity;
    // Things are kept by their kind, so the entity found under a kind is of it.
    return entity as Entities[K] | undefined;
  };
  return { file, files: visible, includes, find, locate };
}

/** Visits a file and its includes; gives the way back to the file at the start, if there is one. */
function follow(
  from: SourceFile,
  start: string,
  seen: Map<string, SourceFile>,
  files: Files,
  open: (path: string) => SourceFile | { readonly problem: string },
  way: readonly string[],
): string | undefined {
  if (seen.has(from.path)) return undefined;
  seen.set(from.path, from);
  let cycle: string | undefined;
  for (const include of from.outline.includes) {
    const path = resolvePath(folderOf(from.path), include.path);
    const longer = [...way, include.path];
    if (path === start) {
      cycle ??= longer.join(" -> ");
      continue;
    }
    if (!isWithin(path, files.root(from.path)) || include.path.startsWith("/")) continue;
    const opened = open(path);
    if ("problem" in opened) continue;
    cycle ??= follow(opened, start, seen, files, open, longer);
  }
  return cycle;
}
