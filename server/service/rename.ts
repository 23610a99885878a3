// Gives a thing another name, wherever it stands.
import type { Edit } from "../../shared/text/edit.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { isSamePlace, type NamePlace, nameAt, type View } from "./names.ts";
import type { Position } from "./position.ts";
import { rangeAt, rangeNames } from "./range-names.ts";
import { references } from "./references.ts";

/** Edits of several files by path, or a sentence that says why there are none. */
export type Renamed = ReadonlyMap<string, readonly Edit[]> | { readonly problem: string };

/** The name that would be changed. */
export function renamable(
  { scope }: Analysis,
  position: Position,
): Pick<NamePlace, "id" | "span"> | undefined {
  return nameAt(scope.file, position) ?? rangeAt(scope, position);
}

/** The edits that give the thing at a place a new name in all files that see it. */
export function rename(analysis: Analysis, position: Position, to: string, others: readonly View[]): Renamed {
  const name = renamable(analysis, position);
  if (name === undefined) return { problem: "there is no name here" };
  // `void` behind the cells of a row would no longer be a name.
  if (!/^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(to) || to === "void") {
    return {
      problem: `'${to}' cannot be a name: letters, digits, '.', '_' and '-', beginning with a letter or digit, and not 'void'`,
    };
  }
  const found = references(analysis, position, others);
  const paths = new Set(found.map(({ path }) => path));
  const taken = to === name.id ? undefined : takenBy(analysis.scope, position, to, others, paths);
  if (taken !== undefined) return { problem: `there is already a ${taken} '${to}'` };
  const edits = new Map<string, Edit[]>();
  for (const { path, span } of found) edits.set(path, [...(edits.get(path) ?? []), { span, text: to }]);
  return edits;
}

/**
 * The kind of thing that has a name already in a file that would be changed, or in one that sees what would be renamed
 * without naming it; `undefined` where the name is free.
 */
function takenBy(
  scope: Scope,
  position: Position,
  to: string,
  others: readonly View[],
  paths: ReadonlySet<string>,
): string | undefined {
  const name = nameAt(scope.file, position);
  if (name === undefined) {
    const range = rangeAt(scope, position);
    return range !== undefined && rangeNames(range.bench).includes(to) ? "range" : undefined;
  }
  const target = scope.locate(name.kind, name.id);
  const isTaken = ({ file, locate }: View): boolean => {
    const sees = target !== undefined && isSamePlace(locate(name.kind, name.id), target);
    return (sees || paths.has(file.path)) && locate(name.kind, to) !== undefined;
  };
  return [scope, ...others].some(isTaken) ? name.kind : undefined;
}
