// The whole test run: lint, types, build, tests; ends with one line that says how many passed and failed.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const folder = mkdtempSync(join(tmpdir(), "headnote-test-"));
const report = join(folder, "report.json");

const REPORTERS = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];

/** Steps beside the tests; each counts as one. The build comes first, since the tests look at its size. */
const STEPS: readonly (readonly [name: string, ...command: string[]])[] = [
  ["lint", "npx", "biome", "ci", "--colors=off", "--error-on-warnings", "."],
  ["types", "node", "test/types.ts"],
  ["build", "node", "client/build.ts"],
  ["tests", "npx", "vitest", "run", "--config=test/vitest.config.ts", ...REPORTERS],
];

let passed = 0;
let failed = 0;
for (const [name, command, ...args] of STEPS) {
  console.log(`\n== ${name}`);
  const { status } = spawnSync(command ?? "", args, { stdio: "inherit" });
  if (status === 0) passed++;
  else failed++;
}
const counts = readCounts();
passed += counts.passed;
failed += counts.failed;
rmSync(folder, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

function readCounts(): { readonly passed: number; readonly failed: number } {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, "utf8"));
    return { passed: numPassedTests, failed: numFailedTests };
  } catch {
    return { passed: 0, failed: 0 };
  }
}
