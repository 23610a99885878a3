// What the language server needs of a machine with a disk.
import { readdirSync } from "node:fs";
import type { Runtime } from "../lsp/runtime.ts";
import { diskFiles } from "./disk-files.ts";

/** Folders that hold no records of one's own. */
const LEFT_OUT = new Set(["node_modules", ".git"]);
/** A workspace with more is not looked through. */
const MOST_RECORDS = 20_000;

export function nodeRuntime(): Runtime {
  const disk = diskFiles();
  return {
    readNow: disk.read,
    root: disk.root,
    list: (folders) => {
      const found: string[] = [];
      for (const folder of folders) collect(folder, found);
      return found;
    },
    later: (task) => setImmediate(task),
    today: () => {
      const now = new Date();
      const two = (value: number) => String(value).padStart(2, "0");
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    },
  };
}

/** Links are not followed, so that a circle of them ends. */
function collect(folder: string, found: string[]): void {
  let entries: ReturnType<typeof entriesOf>;
  try {
    entries = entriesOf(folder);
  } catch {
    return;
  }
  for (const entry of entries) {
    if (found.length >= MOST_RECORDS) return;
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) {
      if (!LEFT_OUT.has(entry.name)) collect(path, found);
    } else if (entry.isFile() && entry.name.endsWith(".headnote")) found.push(path);
  }
}

function entriesOf(folder: string) {
  return readdirSync(folder, { withFileTypes: true });
}
