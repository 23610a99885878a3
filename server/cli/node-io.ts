// The process that the command runs in.
import { watch, writeSync } from "node:fs";
import { join } from "node:path";
import type { Io } from "./io.ts";

/** The real process. A reader that goes away (`headnote check | head`) ends it quietly. */
export function nodeIo(): Io {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit();
  });
  return {
    cwd: process.cwd(),
    env: process.env,
    isTerminal: process.stdout.isTTY === true,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    stdin: async () => {
      const chunks: Uint8Array[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk);
      return Buffer.concat(chunks);
    },
    writeBytes: (descriptor, bytes) => writeSync(descriptor, bytes),
    today,
    watch: (folders, changed) => {
      const watchers = folders.map(({ path, recursive }) =>
        watch(path, { recursive }, (_event, file) => changed(join(path, file ?? ""))).on("error", () =>
          changed(path),
        ),
      );
      return () => {
        for (const watcher of watchers) watcher.close();
      };
    },
    ended: new Promise(() => {}),
  };
}

function today(): string {
  const now = new Date();
  const parts = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  return parts.map((part) => String(part).padStart(2, "0")).join("-");
}
