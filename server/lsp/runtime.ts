// What the server needs of the machine it runs on; Node and a browser's worker each have their own.
import type { FileEnding } from "../../shared/messages/requests.ts";
import type { FileRead } from "../analysis/files.ts";

export interface Runtime {
  /** Reads a file at once, where the machine can; files are asked of the client otherwise. */
  readonly readNow?: (path: string) => FileRead;
  /** The folder that a file's includes must stay in; the workspace's own folders are tried where this gives nothing. */
  readonly root?: (path: string) => string;
  /** All files below folders whose names end so, where the machine can look for them itself. */
  readonly list?: (folders: readonly string[], ending: FileEnding) => readonly string[];
  /** Runs a task once what is waiting has been done; later calls before that replace earlier ones' timing only. */
  readonly later: (task: () => void) => void;
  /** The time as a record writes it, for completion. */
  readonly now: () => string;
}
