// Writes the paths of includes and logs anew when files are renamed, so that each still leads where it led.
import type { Edit } from "../../shared/text/edit.ts";
import { folderOf, isWithin, relativePath } from "../../shared/text/path.ts";
import { quotedText } from "../../shared/text/quoted-text.ts";
import type { Scope } from "../analysis/scope.ts";
import { documentLinks } from "./document-links.ts";

/** A file, or a folder with all that is in it, and where it will be. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** The edits of each record, by the path that it has before the moves. */
export function movedFiles(
  scopes: readonly Scope[],
  moves: readonly Move[],
): ReadonlyMap<string, readonly Edit[]> {
  const edits = new Map<string, readonly Edit[]>();
  for (const scope of scopes) {
    const { path: own } = scope.file;
    const ownFolder = folderOf(moved(own, moves));
    const rewritten = documentLinks({ scope }).flatMap(({ path, span }): readonly Edit[] => {
      const before = relativePath(folderOf(own), path);
      const after = relativePath(ownFolder, moved(path, moves));
      return after === before ? [] : [{ span, text: quotedText(after) }];
    });
    if (rewritten.length > 0) edits.set(own, rewritten);
  }
  return edits;
}

/** Where a path will be. */
function moved(path: string, moves: readonly Move[]): string {
  const move = moves.find(({ from }) => isWithin(path, from));
  return move === undefined ? path : move.to + path.slice(move.from.length);
}
