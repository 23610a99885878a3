// The command as a process: what only a real one can show.
import { spawn } from "node:child_process";
import { copyFileSync, existsSync, openSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { bundleScript, compiledPath } from "../../server/cli/command-bundle.ts";
import { inShop, type Ran } from "../kit/command.ts";

const DIST = join(import.meta.dirname, "../../dist");
const MAIN = join(DIST, "cli.cjs");

/** Starts the command; with `readsOut` false its output is closed at once. */
function start(
  cwd: string,
  args: readonly string[],
  { main = MAIN, readsOut = true, output = "pipe" as "pipe" | number, talk = "pipe" as "pipe" | number } = {},
): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [main, ...args], { cwd, stdio: ["ignore", output, talk] });
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

test("is still reached under the name that older links have", async () => {
  const { code, out } = await start(".", ["--version"], { main: join(DIST, "cli.js") });
  expect([code, out]).toEqual([0, `${manifest.version}\n`]);
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

test.runIf(existsSync("/dev/full"))("ends with its own code when its talk finds no room", async () => {
  expect((await start(".", ["check", "nowhere"], { talk: openSync("/dev/full", "w") })).code).toBe(2);
});

test("writes all of a long output into a pipe", async () => {
  await inShop({ "x.headnote": slips }, async (shop) => {
    const { code, out } = await start(shop.folder, ["check", "--format", "json"]);
    expect(code).toBe(1);
    expect(JSON.parse(out).findings.length).toBe(3000);
  });
});

describe("the code that was compiled when the command was built", () => {
  const bundle = join(DIST, "command.cjs");
  const compiled = readFileSync(compiledPath(bundle));

  test("is taken", () => {
    expect(bundleScript(bundle, compiled).cachedDataRejected).toBe(false);
  });

  test.each([
    ["is missing", undefined],
    ["is nonsense", Buffer.alloc(5000, 7)],
    ["is cut off", compiled.subarray(0, compiled.length / 2)],
  ])("may be of no use where it %s", async (_, spoiled) => {
    await inShop({ "x.headnote": slips }, async (shop) => {
      for (const name of ["cli.cjs", "command.cjs"]) copyFileSync(join(DIST, name), join(shop.folder, name));
      if (spoiled !== undefined) shop.write(basename(compiledPath(bundle)), spoiled);
      const ran = await start(shop.folder, ["check", "x.headnote"], { main: join(shop.folder, "cli.cjs") });
      expect(ran).toEqual(await start(shop.folder, ["check", "x.headnote"]));
      expect(ran.code).toBe(1);
    });
  });
});
