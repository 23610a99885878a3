// Everywhere that the name under the cursor stands.
import type { Analysis } from "../analysis/project.ts";
import { type FoundName, nameAt, places, type View, withIncluded } from "./names.ts";
import type { Position } from "./position.ts";
import { rangeAt, rangePlaces } from "./range-names.ts";

/**
 * The places of a name in its file, in what that includes and in other files, its definition among them; none where there
 * is no name.
 */
export function references(
  { scope }: Analysis,
  position: Position,
  others: readonly View[],
): readonly Pick<FoundName, "path" | "span" | "role">[] {
  const all = withIncluded(scope, others);
  const name = nameAt(scope.file, position);
  if (name !== undefined) return places(scope, name.kind, name.id, all);
  const range = rangeAt(scope, position);
  const rest = all.filter(({ file }) => file.path !== scope.file.path);
  return range === undefined ? [] : rangePlaces(range, [scope, ...rest]);
}
