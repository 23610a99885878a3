// The files that the server sees: open documents before all else, then what was read of the disk or the client.
import type { TextDocuments } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { folderOf, isWithin } from "../../shared/text/path.ts";
import type { FileRead, Files } from "../analysis/files.ts";
import type { Runtime } from "./runtime.ts";
import { pathOf, uriOf } from "./uris.ts";

/** Reads a file by asking the client for it. */
export type Fetch = (uri: string) => Promise<FileRead>;

export interface OpenFiles extends Files {
  /** Fetches what was asked for, and waits for what others have asked for too; says whether there was anything. */
  readonly fetchMissing: () => Promise<boolean>;
  /** Forgets what was read of a file, or of all in a folder, since it has changed on the disk. */
  readonly forget: (path: string) => void;
  /** The folders of the workspace. */
  folders: readonly string[];
}

const WAITING: FileRead = { problem: "it is still being read" };

export function openFiles(documents: TextDocuments<TextDocument>, runtime: Runtime, fetch: Fetch): OpenFiles {
  const read = new Map<string, FileRead>();
  const wanted = new Set<string>();
  const underway = new Map<string, Promise<void>>();
  const load = (path: string): void => {
    const own: Promise<void> = fetch(uriOf(path))
      .catch((): FileRead => ({ problem: "it cannot be read" }))
      .then((found) => {
        // What was forgotten meanwhile is asked for again.
        if (underway.get(path) !== own) return;
        underway.delete(path);
        read.set(path, found);
      });
    underway.set(path, own);
  };
  const files: OpenFiles = {
    folders: [],
    read: (path) => {
      const open = documents.get(uriOf(path));
      if (open !== undefined) return { text: open.getText() };
      const known = read.get(path);
      if (known !== undefined) return known;
      if (runtime.readNow === undefined) {
        wanted.add(path);
        return WAITING;
      }
      const now = runtime.readNow(path);
      read.set(path, now);
      return now;
    },
    root: (path) => {
      const own = folderOf(path);
      return runtime.root?.(path) ?? files.folders.find((folder) => isWithin(path, folder)) ?? own;
    },
    fetchMissing: async () => {
      for (const path of wanted) if (!underway.has(path)) load(path);
      wanted.clear();
      const waiting = [...underway.values()];
      await Promise.all(waiting);
      return waiting.length > 0;
    },
    forget: (path) => {
      for (const kept of [read, underway]) {
        for (const known of kept.keys()) if (isWithin(known, path)) kept.delete(known);
      }
    },
  };
  return files;
}

/** The paths of the documents that are open. */
export function openPaths(documents: TextDocuments<TextDocument>): readonly string[] {
  return documents.keys().map(pathOf);
}
