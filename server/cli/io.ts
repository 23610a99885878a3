// What the command needs of the process that it runs in, so that tests can run it without one.

export interface Io {
  /** Absolute; paths are printed relative to it. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether the result goes to a terminal. */
  readonly isTerminal: () => boolean;
  /** The result. */
  readonly out: (text: string | Uint8Array) => void;
  /** The talk. */
  readonly err: (text: string) => void;
  /** Settles when all of both has been written. */
  readonly flushed: () => Promise<void>;
  readonly stdin: () => Promise<Uint8Array>;
  /** Puts bytes into an open file and gives how many it took; throws as a disk does that is full. */
  readonly writeBytes: (descriptor: number, bytes: Uint8Array) => number;
  /** Today's date, `YYYY-MM-DD`, where the machine stands. */
  readonly today: () => string;
  /** Calls back after each change in the folders, until the function that it gives is called. */
  readonly watch: (folders: readonly WatchedFolder[], changed: (file: string) => void) => () => void;
  /** Resolves when a watching command is to end. */
  readonly ended: Promise<void>;
}

export interface WatchedFolder {
  readonly path: string;
  readonly recursive: boolean;
}
