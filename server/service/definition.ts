// Where the thing under the cursor is defined.
import { shifted } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";
import { isNamed } from "../analysis/source-file.ts";
import { type FoundName, nameAt, withIncluded } from "./names.ts";
import type { Position } from "./position.ts";
import { rangeAt, rangePlaces } from "./range-names.ts";

/** The definition of the name at a place; `undefined` where there is no name, or none that is known. */
export function definition(
  { scope }: Analysis,
  position: Position,
): Pick<FoundName, "path" | "span"> | undefined {
  const name = nameAt(scope.file, position);
  if (name === undefined) {
    const range = rangeAt(scope, position);
    const found = range && rangePlaces(range, [scope, ...withIncluded(scope, [])]);
    return found?.find(({ role }) => role === "definition");
  }
  const placed = scope.locate(name.kind, name.id);
  if (placed === undefined || !isNamed(placed.entity)) return undefined;
  return { path: placed.path, span: shifted(placed.entity.origin.name, placed.start) };
}
