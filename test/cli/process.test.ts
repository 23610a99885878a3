// The command as a process: what only a real one can show.
import { spawn } from "node:child_process";
import { existsSync, openSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { inShop, type Ran } from "../kit/command.ts";

const MAIN = join(import.meta.dirname, "../../server/cli/main.ts");

/** Starts the command; with `readsOut` false its output is closed at once. */
function start(
  cwd: string,
  args: readonly string[],
  { readsOut = true, output = "pipe" as "pipe" | number } = {},
): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [MAIN, ...args], { cwd, stdio: ["ignore", output, "pipe"] });
    let out = "";
    let err = "";
    if (readsOut) child.stdout?.on("data", (chunk) => (out += chunk));
    else child.stdout?.destroy();
    child.stderr?.on("data", (chunk) => (err += chunk));
    child.on("close", (code) => resolve({ code: code ?? -1, out, err }));
  });
}

const slips = `headnote 1\nbench b\n  shows      flow\n${"  repeat     0,4 %\n".repeat(3000)}`;

test("tells its version", async () => {
  expect(await start(".", ["--version"])).toEqual({ code: 0, out: `${manifest.version}\n`, err: "" });
});

test("ends quietly when its reader goes away", async () => {
  await inShop({ "x.headnote": slips }, async (shop) => {
    expect((await start(shop.folder, ["check"], { readsOut: false })).err).toBe("");
  });
});

test.runIf(existsSync("/dev/full"))("says in a sentence that its output found no room", async () => {
  await inShop({ "x.headnote": slips }, async (shop) => {
    const { code, err } = await start(shop.folder, ["check"], { output: openSync("/dev/full", "w") });
    expect([code, err]).toEqual([2, "headnote: the output cannot be written: the disk is full\n"]);
  });
});

test("writes all of a long output into a pipe", async () => {
  await inShop({ "x.headnote": slips }, async (shop) => {
    const { code, out } = await start(shop.folder, ["check", "--format", "json"]);
    expect(code).toBe(1);
    expect(JSON.parse(out).findings.length).toBe(3000);
  });
});
