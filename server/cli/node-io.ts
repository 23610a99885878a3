// The process that the command runs in.
import { watch, writeSync } from "node:fs";
import { join } from "node:path";
import { UNUSABLE } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { output } from "./output.ts";
import { writeProblem } from "./write-file.ts";

/**
 * The real process. A reader that goes away (`headnote check | head`) ends it quietly, output that has no room for it with
 * a sentence; talk that nobody can hear is no reason to end.
 */
export function nodeIo(): Io {
  const err = output(2, () => process.stderr.on("error", () => undefined));
  const out = output(1, () =>
    process.stdout.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EPIPE") process.exit();
      err.write(`headnote: the output cannot be written: ${writeProblem(error)}\n`);
      process.exit(UNUSABLE);
    }),
  );
  return {
    cwd: process.cwd(),
    env: process.env,
    isTerminal: out.isTerminal,
    out: out.write,
    err: err.write,
    flushed: async () => {
      // What cannot be written ends the process with a code of its own, a little later; what cannot be said does not.
      await out.flushed().catch(() => new Promise(() => {}));
      await err.flushed().catch(() => undefined);
    },
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
