// Writes the generated files, or says with --check which of them are stale.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { OUTPUTS } from "./outputs.ts";

const ROOT = join(import.meta.dirname, "../..");

function committed(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}

const stale = OUTPUTS.map(({ path, make }) => ({ path, text: make() })).filter(
  ({ path, text }) => committed(join(ROOT, path)) !== text,
);
if (process.argv.includes("--check")) {
  for (const { path } of stale) process.stderr.write(`${path} is stale: run npm run generate\n`);
  process.exitCode = stale.length === 0 ? 0 : 1;
} else {
  for (const { path, text } of stale) {
    mkdirSync(dirname(join(ROOT, path)), { recursive: true });
    writeFileSync(join(ROOT, path), text);
    process.stdout.write(`${path}\n`);
  }
}
