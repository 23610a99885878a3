#!/usr/bin/env node
// The command's entry: ties it to the process. It is packed alone and loads the command from the bundle beside it.
import { existsSync, readFileSync } from "node:fs";
import type * as nodeModule from "node:module";
import { join } from "node:path";
import { bundleScript, commandOf, compiledPath } from "./command-bundle.ts";

if (Number.parseInt(process.versions.node, 10) < 22) {
  process.stderr.write(`headnote: needs Node.js 22 or later; this is ${process.versions.node}\n`);
  process.exit(2);
}
const bundle = join(import.meta.dirname, "command.cjs");
const compiled = compiledPath(bundle);
const { run }: ReturnType<typeof commandOf> = existsSync(compiled)
  ? commandOf(bundleScript(bundle, readFileSync(compiled)), bundle, load)
  : load(bundle);

// The end is not left to the process: to take a large heap down piece by piece lasts up to a tenth of a check.
run(process.argv.slice(2)).then((code) => process.exit(code));

/** Of our own bundles, the compiled code that the command does not bring is kept by Node. */
function load(id: string) {
  if (!id.startsWith("node:")) (require("node:module") as typeof nodeModule).enableCompileCache();
  return require(id);
}
