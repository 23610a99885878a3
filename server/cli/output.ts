// Standard output and standard error. To load Node's streams takes as long as to judge a short record, so what a descriptor
// takes at once is put there without one.
import { fstatSync, writeSync } from "node:fs";

export interface Output {
  readonly write: (text: string | Uint8Array) => void;
  /** Settles when all has been written; rejects where that has failed, which the stream's owner is told a little later. */
  readonly flushed: () => Promise<void>;
  readonly isTerminal: () => boolean;
}

/** Windows' consoles have letters of their own, which only the stream knows. */
const NEEDS_STREAM = process.platform === "win32";

/** `open` gives the stream, with somebody who hears of its errors; it is called when there is no way around it. */
export function output(descriptor: number, open: () => NodeJS.WriteStream): Output {
  let stream: NodeJS.WriteStream | undefined;
  const opened = () => {
    stream ??= open();
    return stream;
  };
  return {
    write: (text) => {
      const rest = stream !== undefined || NEEDS_STREAM ? text : unwritten(descriptor, text);
      if (rest.length > 0) opened().write(rest);
    },
    flushed: () =>
      new Promise((resolve, reject) => {
        if (stream === undefined) resolve();
        else stream.write("", (error) => (error ? reject(error) : resolve()));
      }),
    isTerminal: () => (NEEDS_STREAM || fstatSync(descriptor).isCharacterDevice()) && opened().isTTY === true,
  };
}

/** Writes what can be written at once, and gives what is left: for the stream to wait with, or to say what is wrong. */
function unwritten(descriptor: number, text: string | Uint8Array): Uint8Array {
  const bytes = typeof text === "string" ? Buffer.from(text) : text;
  let at = 0;
  try {
    while (at < bytes.length) at += writeSync(descriptor, bytes, at);
  } catch {
    // The stream meets the same problem.
  }
  return bytes.subarray(at);
}
