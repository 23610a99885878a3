// Writes files so that a failure never leaves one changed by half.
import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { problemOf } from "../disk/disk-files.ts";
import type { Io } from "./io.ts";

const PROBLEMS: Readonly<Record<string, string>> = {
  EACCES: "it may not be written",
  EPERM: "it may not be written",
  EEXIST: "it is there already",
  ENOENT: "its folder is not there",
};

/**
 * Replaces a file, or makes it: the bytes go into a file beside it, which then takes its place with its mode. A link stays
 * and its target is replaced. Gives what went wrong, in words; then the file is as it was and nothing is left beside it.
 */
export function replaceFile(path: string, bytes: Uint8Array, io: Pick<Io, "writeBytes">): string | undefined {
  let beside: string | undefined;
  try {
    const { target, mode } = targetOf(path);
    const name = join(dirname(target), `.${basename(target)}.${process.pid}.tmp`);
    const descriptor = openSync(name, "wx");
    beside = name;
    writeAll(descriptor, bytes, io, mode);
    renameSync(name, target);
    return undefined;
  } catch (error) {
    if (beside !== undefined) rmSync(beside, { force: true });
    return writeProblem(error);
  }
}

/** Makes a file that must not be there yet. Gives what went wrong, in words; then there is no such file of ours. */
export function createFile(path: string, bytes: Uint8Array, io: Pick<Io, "writeBytes">): string | undefined {
  let isOurs = false;
  try {
    const descriptor = openSync(path, "wx");
    isOurs = true;
    writeAll(descriptor, bytes, io);
    return undefined;
  } catch (error) {
    if (isOurs) rmSync(path, { force: true });
    return writeProblem(error);
  }
}

/** The file itself behind links, and its mode; a new file has none yet. */
function targetOf(path: string): { readonly target: string; readonly mode?: number } {
  let target: string;
  try {
    target = realpathSync(path);
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return { target: path };
    throw error;
  }
  accessSync(target, constants.W_OK);
  return { target, mode: statSync(target).mode & 0o7777 };
}

function writeAll(
  descriptor: number,
  bytes: Uint8Array,
  { writeBytes }: Pick<Io, "writeBytes">,
  mode?: number,
): void {
  try {
    // The mode of an opened file is cut by the process's mask; this one is not.
    if (mode !== undefined) fchmodSync(descriptor, mode);
    for (let at = 0; at < bytes.length; ) at += writeBytes(descriptor, bytes.subarray(at));
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/** Why something cannot be written, in words. */
export function writeProblem(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return PROBLEMS[code] ?? problemOf(error).replace("cannot be read", "cannot be written");
}
