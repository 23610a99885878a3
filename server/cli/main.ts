// The command's entry: ties it to the process.
import { nodeIo } from "./node-io.ts";
import { run } from "./run.ts";

process.exitCode = await run(process.argv.slice(2), nodeIo());
