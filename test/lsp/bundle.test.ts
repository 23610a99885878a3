// The one program that the extension starts: as a process, and as a script in a worker, where there is nothing of Node.
import { fork } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { expect, test } from "vitest";

const file = join(import.meta.dirname, "../../dist/server.js");
const initialize = {
  jsonrpc: "2.0",
  id: 1,
  method: "initialize",
  params: { processId: null, rootUri: null, capabilities: {} },
};
const answer = { id: 1, result: { serverInfo: { name: "headnote" } } };

test("serves an editor that starts it as a process", async () => {
  const server = fork(file, ["--node-ipc"], { execArgv: [] });
  server.send(initialize);
  const [said] = await once(server, "message");
  server.kill();
  expect(said).toMatchObject(answer);
});

test("serves an editor that starts it as a worker", async () => {
  const { promise, resolve } = Promise.withResolvers<unknown>();
  const worker: Record<string, unknown> = {
    importScripts: () => undefined,
    addEventListener: () => undefined,
    postMessage: resolve,
    ...{ setTimeout, clearTimeout, console, TextEncoder, TextDecoder },
  };
  worker["self"] = worker;
  runInContext(readFileSync(file, "utf8"), createContext(worker));
  // A worker's messages wait until its script has come to its end, and what that has put off.
  await new Promise(setImmediate);
  (worker["onmessage"] as (event: unknown) => void)({ data: initialize });
  expect(await promise).toMatchObject(answer);
});
