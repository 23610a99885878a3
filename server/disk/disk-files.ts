// Files as they lie on a disk.
import { isUtf8 } from "node:buffer";
import { closeSync, existsSync, fstatSync, openSync, readSync } from "node:fs";
import { dirname, join, sep } from "node:path";
import { folderOf } from "../../shared/text/path.ts";
import type { FileRead, Files } from "../analysis/files.ts";

/** Larger files are not records (common sense: a year's readings of a shop are a few megabytes). */
export const LARGEST_FILE = 64 * 1024 * 1024;

/** A path with `/`, as all paths inside are. */
export function slashed(path: string): string {
  return sep === "/" ? path : path.replaceAll(sep, "/");
}

/** The disk, read at most once a file; paths are absolute. */
export function diskFiles(): Files {
  const roots = new Map<string, string>();
  const root = (path: string): string => {
    const known = roots.get(folderOf(path));
    if (known !== undefined) return known;
    const folder = dirname(path);
    const found = slashed(findUp(folder, "headnote.json") ?? findUp(folder, ".git") ?? folder);
    roots.set(folderOf(path), found);
    return found;
  };
  return { read: readText, root };
}

/** The nearest folder from here upward that holds the entry. */
export function findUp(folder: string, entry: string): string | undefined {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, entry))) return at;
    if (dirname(at) === at) return undefined;
  }
}

/** A file's text; why not, in a sentence that a user can act on. */
export function readText(path: string): FileRead {
  try {
    const bytes = readBytes(path);
    if (bytes === undefined) return { problem: "it is larger than 64 MB" };
    const text = bytes.toString("utf8");
    // Only a text with this mark can have been something else; it may also stand in the file itself.
    const isText = !text.includes("\uFFFD") || isUtf8(bytes);
    return isText ? { text } : { problem: "it is not UTF-8 text" };
  } catch (error) {
    return { problem: problemOf(error) };
  }
}

/** Most records fit into it, so that they need none of their own. */
const room = Buffer.allocUnsafeSlow(64 * 1024);

/** The bytes of a file, until the next is read; `undefined` for a file that is too large, or that never ends. */
function readBytes(path: string): Buffer | undefined {
  const file = openSync(path, "r");
  try {
    let bytes: Buffer = room;
    let length = 0;
    for (;;) {
      const read = readSync(file, bytes, length, bytes.length - length, null);
      if (read === 0) return bytes.subarray(0, length);
      length += read;
      if (length < bytes.length) continue;
      const size = Math.max(fstatSync(file).size, length);
      if (size > LARGEST_FILE) return undefined;
      bytes = larger(bytes, size + 1);
    }
  } finally {
    closeSync(file);
  }
}

/** The same bytes with room for more: for so many, or for twice as many where that is not enough. */
function larger(bytes: Buffer, size: number): Buffer {
  const more = Buffer.allocUnsafeSlow(Math.max(size, 2 * bytes.length));
  bytes.copy(more);
  return more;
}

const PROBLEMS: Readonly<Record<string, string>> = {
  ENOENT: "it is not there",
  EACCES: "it may not be read",
  EPERM: "it may not be read",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is not a folder",
  ENOSPC: "the disk is full",
  EROFS: "the disk can only be read",
  ELOOP: "its links lead in a circle",
  ENAMETOOLONG: "its name is too long",
};

/** Why a file operation failed, in words. */
export function problemOf(error: unknown): string {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  return PROBLEMS[code] ?? (code === "" ? "it cannot be read" : `it cannot be read (${code})`);
}
