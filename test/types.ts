// Type-checks every folder against its own libraries, so that a global that a folder must not know does not compile.
import { spawnSync } from "node:child_process";

const FOLDERS = [
  "shared",
  "grammar",
  "server/analysis",
  "server/rules",
  "server/service",
  "server/generate",
  "server/disk",
  "server/lsp",
  "server/cli",
  "client",
  "client/preview/page",
  "test",
];

let failed = 0;
for (const folder of FOLDERS) {
  const { status } = spawnSync("npx", ["tsc", "-p", folder], { stdio: "inherit" });
  if (status !== 0) {
    console.error(`types: ${folder} does not compile`);
    failed++;
  }
}
process.exitCode = failed === 0 ? 0 : 1;
