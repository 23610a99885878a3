// Runs the command in a folder of its own, in this process, and tells all that came of it.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Io } from "../../server/cli/io.ts";
import { run } from "../../server/cli/run.ts";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder with files, and the command in it. */
export interface Shop {
  readonly folder: string;
  readonly write: (path: string, content: string | Uint8Array) => void;
  readonly read: (path: string) => string;
  readonly headnote: (args: readonly string[], given?: Partial<Io>) => Promise<Ran>;
}

/** Opens a shop with files for one test and takes it away afterwards. */
export async function inShop(
  files: Readonly<Record<string, string | Uint8Array>>,
  test: (shop: Shop) => Promise<void>,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "headnote-cli-"));
  const write: Shop["write"] = (path, content) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  };
  try {
    for (const [path, content] of Object.entries(files)) write(path, content);
    await test({
      folder,
      write,
      read: (path) => readFileSync(join(folder, path), "utf8"),
      headnote: (args, given) => runIn(folder, args, given),
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function runIn(folder: string, args: readonly string[], given: Partial<Io> = {}): Promise<Ran> {
  let out = "";
  let err = "";
  const io: Io = {
    cwd: folder,
    env: {},
    isTerminal: () => false,
    flushed: async () => undefined,
    out: (text) => {
      out += typeof text === "string" ? text : new TextDecoder("latin1").decode(text);
    },
    err: (text) => {
      err += text;
    },
    stdin: async () => new Uint8Array(),
    writeBytes: (descriptor, bytes) => writeSync(descriptor, bytes),
    today: () => "2026-11-25",
    watch: () => () => undefined,
    ended: Promise.resolve(),
    ...given,
  };
  return { code: await run(args, io), out, err };
}
