// The command's entry: ties it to the process.
import * as nodeModule from "node:module";

if (Number.parseInt(process.versions.node, 10) < 22) {
  process.stderr.write(`headnote: needs Node.js 22 or later; this is ${process.versions.node}\n`);
  process.exit(2);
}
// Before anything else is loaded, so that the next start finds it compiled.
nodeModule.enableCompileCache();
const [{ nodeIo }, { run }] = await Promise.all([import("./node-io.ts"), import("./run.ts")]);

process.exitCode = await run(process.argv.slice(2), nodeIo());
