// Output past Node's streams: what a descriptor does not take at once must not be lost.
import { spawnSync } from "node:child_process";
import { constants, mkdtempSync, openSync, readSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { output } from "../../server/cli/output.ts";

/** A pipe that never waits, and reads what is in it. */
function fullPipe(): {
  readonly descriptor: number;
  readonly read: () => Buffer;
  readonly remove: () => void;
} {
  const folder = mkdtempSync(join(tmpdir(), "headnote-pipe-"));
  const path = join(folder, "pipe");
  spawnSync("mkfifo", [path]);
  const descriptor = openSync(path, constants.O_RDWR | constants.O_NONBLOCK);
  const read = () => {
    const bytes = Buffer.alloc(1_000_000);
    return bytes.subarray(0, readSync(descriptor, bytes));
  };
  return { descriptor, read, remove: () => rmSync(folder, { recursive: true }) };
}

test.runIf(process.platform === "linux")("goes on through the stream, in order, once a pipe is full", () => {
  const pipe = fullPipe();
  const later: Uint8Array[] = [];
  const stream = { write: (rest: Uint8Array | string) => later.push(Buffer.from(rest)) };
  const { write } = output(pipe.descriptor, () => stream as unknown as NodeJS.WriteStream);
  const parts = ["a", "b", "c"].map((letter) => letter.repeat(50_000));
  for (const part of parts) write(part);
  const atOnce = pipe.read();
  pipe.remove();
  expect(atOnce.length).toBeGreaterThan(50_000);
  expect(later.length).toBeGreaterThan(1);
  expect(Buffer.concat([atOnce, ...later]).toString()).toBe(parts.join(""));
});

test.runIf(process.platform === "linux")("opens no stream for what is taken at once", async () => {
  const written = output(openSync("/dev/null", "w"), () => expect.unreachable());
  written.write("a text");
  await written.flushed();
});
