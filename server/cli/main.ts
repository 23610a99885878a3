// The command's entry: ties it to the process.
import { enableCompileCache } from "node:module";

// Before anything else is loaded, so that the next start finds it compiled.
enableCompileCache();
const [{ nodeIo }, { run }] = await Promise.all([import("./node-io.ts"), import("./run.ts")]);

process.exitCode = await run(process.argv.slice(2), nodeIo());
