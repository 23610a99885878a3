// What a record that is included defines.
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Analysis } from "../analysis/project.ts";
import { isNamed, type SourceFile } from "../analysis/source-file.ts";
import { documentLinks } from "./document-links.ts";
import type { Hover } from "./hover.ts";
import { escaped } from "./markdown.ts";
import { isAt, type Position } from "./position.ts";

/** Of the file that is named at a place; nothing where none is named, or where it cannot be read. */
export function fileHover(analysis: Analysis, position: Position): Hover | undefined {
  const { scope } = analysis;
  const link = documentLinks(analysis).find(({ span }) => isAt(span, position));
  const file = link && scope.files.find(({ path }) => path === link.path);
  if (link === undefined || file === undefined) return undefined;
  const head = `**${escaped(relativePath(folderOf(scope.file.path), file.path))}**`;
  return { text: [head, ...definedIn(file)].join("\n\n"), span: link.span };
}

/** More of a kind are counted. */
const MOST_NAMES = 12;

/** A line for each kind of thing, in the order of the file. */
function definedIn({ placed }: SourceFile): readonly string[] {
  const names = new Map<string, string[]>();
  for (const { entity } of placed) {
    if (!isNamed(entity) || entity.id === "") continue;
    const known = names.get(entity.kind);
    if (known === undefined) names.set(entity.kind, [entity.id]);
    else known.push(entity.id);
  }
  return [...names].map(([kind, ids]) => {
    const shown = ids.slice(0, MOST_NAMES).map(escaped).join(", ");
    const rest = ids.length > MOST_NAMES ? ` and ${ids.length - MOST_NAMES} more` : "";
    return `${kind}: ${shown}${rest}`;
  });
}
