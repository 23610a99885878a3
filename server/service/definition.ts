// Where the thing under the cursor is defined.
import { shifted } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";
import { isNamed } from "../analysis/source-file.ts";
import { type FoundName, nameAt } from "./names.ts";
import type { Position } from "./position.ts";

/** The definition of the name at a place; `undefined` where there is no name, or none that is known. */
export function definition({ scope }: Analysis, position: Position): FoundName | undefined {
  const name = nameAt(scope.file, position);
  const placed = name && scope.locate(name.kind, name.id);
  if (name === undefined || placed === undefined || !isNamed(placed.entity)) return undefined;
  const span = shifted(placed.entity.origin.name, placed.start);
  return { kind: name.kind, id: name.id, span, role: "definition", path: placed.path };
}
