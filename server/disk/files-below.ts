// Finds the records, or the logs, that lie in a folder and below it.
import { readdirSync } from "node:fs";
import type { FileEnding } from "../../shared/messages/requests.ts";

/** Folders that hold no records of one's own; hidden ones are left out too. */
const LEFT_OUT = "node_modules";

/**
 * The paths of at most so many files whose names end so, by name within each folder. Links are not followed, so that a circle of them ends;
 * a folder that cannot be read has none. Walked by hand, since a pattern's library takes ten times as long.
 */
export function filesBelow(
  folder: string,
  ending: FileEnding,
  most = Number.POSITIVE_INFINITY,
): readonly string[] {
  const found: string[] = [];
  collect(folder, ending, most, found);
  return found;
}

function collect(folder: string, ending: FileEnding, most: number, found: string[]): void {
  const start = folder.endsWith("/") ? folder : `${folder}/`;
  for (const entry of entriesOf(folder)) {
    if (found.length >= most) return;
    const { name } = entry;
    if (name.startsWith(".") || name === LEFT_OUT) continue;
    const path = start + name;
    if (entry.isDirectory()) collect(path, ending, most, found);
    else if (entry.isFile() && name.endsWith(ending)) found.push(path);
  }
}

function entriesOf(folder: string): ReturnType<typeof readFolder> {
  try {
    return readFolder(folder);
  } catch {
    return [];
  }
}

function readFolder(folder: string) {
  return readdirSync(folder, { withFileTypes: true });
}
