// Gives a thing another name, wherever it stands.
import type { Edit } from "../../shared/text/edit.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { type NamePlace, nameAt, places } from "./names.ts";
import type { Position } from "./position.ts";

/** Edits of several files by path, or a sentence that says why there are none. */
export type Renamed = ReadonlyMap<string, readonly Edit[]> | { readonly problem: string };

/** The name that would be changed. */
export function renamable({ scope }: Analysis, position: Position): NamePlace | undefined {
  return nameAt(scope.file, position);
}

/** The edits that give the thing at a place a new name in all files that see it. */
export function rename(
  analysis: Analysis,
  position: Position,
  to: string,
  others: readonly Scope[],
): Renamed {
  const { scope } = analysis;
  const name = nameAt(scope.file, position);
  if (name === undefined) return { problem: "there is no name here" };
  if (!/^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(to)) {
    return {
      problem: `'${to}' cannot be a name: letters, digits, '.', '_' and '-', beginning with a letter or digit`,
    };
  }
  const found = places(scope, name.kind, name.id, others);
  const paths = new Set(found.map(({ path }) => path));
  const taken = [scope, ...others].find(
    ({ file, locate }) => paths.has(file.path) && locate(name.kind, to) !== undefined,
  );
  if (taken !== undefined && to !== name.id) return { problem: `there is already a ${name.kind} '${to}'` };
  const edits = new Map<string, Edit[]>();
  for (const { path, span } of found) edits.set(path, [...(edits.get(path) ?? []), { span, text: to }]);
  return edits;
}
