// What a new session can name: the benches, ports and stages of all records.
import type { NamedKind } from "../../shared/model/model.ts";
import type { Scope } from "../analysis/scope.ts";
import { namesIn } from "../analysis/source-file.ts";

/** A name and the file that defines it. */
export interface KnownName {
  readonly id: string;
  readonly path: string;
}

export interface KnownNames {
  readonly benches: readonly KnownName[];
  readonly ports: readonly KnownName[];
  readonly stages: readonly string[];
}

/** Each name once. Of several files that define it the one that `here` sees, a record that is open, else the first. */
export function knownNames(scopes: readonly Scope[], here: Scope | undefined): KnownNames {
  const named = (kind: NamedKind): readonly KnownName[] => {
    const found = new Map<string, string>();
    for (const { file } of scopes) {
      for (const id of namesIn(file, kind)) if (!found.has(id)) found.set(id, file.path);
    }
    return [...found].map(([id, path]) => ({ id, path: here?.locate(kind, id)?.path ?? path }));
  };
  const stages = scopes.flatMap(({ file }) => file.runs.flatMap(({ entity }) => entity.stage ?? []));
  return { benches: named("bench"), ports: named("port"), stages: [...new Set(stages)] };
}
