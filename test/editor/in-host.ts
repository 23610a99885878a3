// Runs the suite of test/electron inside the workbench's own extension host, beside the installed package.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Opening } from "./workbench.ts";

export interface InHost {
  readonly opening: Opening;
  /** Settles with what went wrong, if anything, once the suite has ended. */
  readonly ended: Promise<string | undefined>;
}

const LONGEST = 60_000;

/** `scratch` is a folder that may be written to. */
export function inHost(vsix: string, suite: string, scratch: string): InHost {
  // An extension has to be under development for a suite to be run; this one is empty, so that the package is tested.
  const empty = join(scratch, "empty-extension");
  mkdirSync(empty, { recursive: true });
  const manifest = { name: "empty", publisher: "headnote", version: "0.0.1", engines: { vscode: "*" } };
  writeFileSync(join(empty, "package.json"), JSON.stringify(manifest));
  const { promise: ended, resolve } = Promise.withResolvers<string | undefined>();
  const said: string[] = [];
  const opening: Opening = {
    vsix,
    payload: (authority) => {
      const uri = (path: string) => `vscode-remote://${authority}${path}`;
      return [
        ["extensionDevelopmentPath", uri(empty)],
        ["extensionTestsPath", uri(suite)],
        ["skipWelcome", "true"],
      ];
    },
    before: async (page) => {
      setTimeout(resolve, LONGEST, "the suite did not end").unref();
      await page.exposeFunction("codeAutomationLog", (_kind: string, words: readonly unknown[]) => {
        said.push(words.map(String).join(" "));
      });
      await page.exposeFunction("codeAutomationExit", (code: number) => {
        const reason = said.filter((line) => line.includes("it never came")).join("\n");
        resolve(code === 0 ? undefined : reason || said.slice(-10).join("\n"));
      });
    },
  };
  return { opening, ended };
}
