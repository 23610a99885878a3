// What the language server needs of a machine with a disk.

import type { Runtime } from "../lsp/runtime.ts";
import { localTime } from "../service/local-time.ts";
import { diskFiles } from "./disk-files.ts";
import { filesBelow } from "./files-below.ts";

/** A workspace with more is not looked through. */
const MOST_FILES = 20_000;

export function nodeRuntime(): Runtime {
  const disk = diskFiles();
  return {
    readNow: disk.read,
    root: disk.root,
    list: (folders, ending) =>
      folders.flatMap((folder) => filesBelow(folder, ending, MOST_FILES)).slice(0, MOST_FILES),
    later: (task) => setImmediate(task),
    now: () => localTime(new Date()),
  };
}
