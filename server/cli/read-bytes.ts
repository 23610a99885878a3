// Reads files that are to be written again: only what would come back byte by byte counts as text.
import { readFileSync, statSync } from "node:fs";
import type { FileRead } from "../analysis/files.ts";
import { LARGEST_FILE, problemOf } from "../disk/disk-files.ts";

/** A file's text with its byte order mark; why not, in words. */
export function readExactly(path: string): FileRead {
  try {
    if (statSync(path).size > LARGEST_FILE) return { problem: "it is larger than 64 MB" };
    return decodeExactly(readFileSync(path));
  } catch (error) {
    return { problem: problemOf(error) };
  }
}

/** Bytes as text, unless some of them are not UTF-8. */
export function decodeExactly(bytes: Uint8Array): FileRead {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { problem: "it is not UTF-8" };
  }
}
