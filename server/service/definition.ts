// Where the thing under the cursor is defined.
import { shifted } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { isNamed } from "../analysis/source-file.ts";
import { documentLinks } from "./document-links.ts";
import { type FoundName, nameAt, withIncluded } from "./names.ts";
import { isAt, type Position } from "./position.ts";
import { rangeAt, rangePlaces } from "./range-names.ts";

/** The definition of the name at a place, or the file that is named there; `undefined` where there is neither. */
export function definition(
  analysis: Analysis,
  position: Position,
): Pick<FoundName, "path" | "span"> | undefined {
  const { scope } = analysis;
  const name = nameAt(scope.file, position);
  if (name === undefined) return rangeDefinition(scope, position) ?? namedFile(analysis, position);
  const placed = scope.locate(name.kind, name.id);
  if (placed === undefined || !isNamed(placed.entity)) return undefined;
  return { path: placed.path, span: shifted(placed.entity.origin.name, placed.start) };
}

function rangeDefinition(scope: Scope, position: Position): Pick<FoundName, "path" | "span"> | undefined {
  const range = rangeAt(scope, position);
  const found = range && rangePlaces(range, [scope, ...withIncluded(scope, [])]);
  return found?.find(({ role }) => role === "definition");
}

/** Editors without links go to a file this way; to one that cannot be read nothing leads. */
function namedFile(analysis: Analysis, position: Position): Pick<FoundName, "path" | "span"> | undefined {
  const link = documentLinks(analysis).find(({ span }) => isAt(span, position));
  const isUnread = analysis.scope.includes.some(
    ({ path, problem }) => path === link?.path && problem !== undefined,
  );
  return link === undefined || isUnread ? undefined : { path: link.path, span: { line: 0, from: 0, to: 0 } };
}
