// Sizes of what is shipped; the build runs before the tests. Times are measured by `npm run bench`, not here.
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { packedFiles } from "./kit/packed-files.ts";

const ROOT = join(import.meta.dirname, "..");
const DIST = join(ROOT, "dist");
const kB = 1000;

/** A bundle's files and all that it loads whatever it is asked for. */
function closure(entry: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(entry)) return seen;
  seen.add(entry);
  const text = readFileSync(join(DIST, entry), "utf8");
  for (const [, file = ""] of text.matchAll(/(?:from|import)\s*"\.\/([^"]+)"/g)) closure(file, seen);
  return seen;
}

function sizeOf(files: Iterable<string>): number {
  return [...files].reduce((sum, file) => sum + statSync(join(DIST, file)).size, 0);
}

describe("the command", () => {
  const entry = readFileSync(join(DIST, "cli.js"), "utf8");
  const first = [...entry.matchAll(/import\("\.\/([^"]+)"\)/g)].map(([, file = ""]) => file);
  const loaded = new Set(["cli.js", ...first].flatMap((file) => [...closure(file)]));

  test("starts with little: what draws alone is larger than this", () => {
    expect(first.length).toBeGreaterThan(0);
    expect(sizeOf(loaded)).toBeLessThan(500 * kB);
  });
});

describe("the extension", () => {
  test("is a small download", () => {
    const sizes = packedFiles().map((file) => deflateRawSync(readFileSync(join(ROOT, file))).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(1000 * kB);
  });

  test("adds little to the language client, which alone is 437 kB, and 402 kB for browsers", () => {
    expect(sizeOf(["extension.cjs"])).toBeLessThan(495 * kB);
    expect(sizeOf(["web/extension.cjs"])).toBeLessThan(465 * kB);
  });

  test("has a preview whose page is little more than what draws", () => {
    expect(sizeOf(["preview/page.js"])).toBeLessThan(730 * kB);
    expect(sizeOf(["preview/page.css"])).toBeLessThan(8 * kB);
  });
});
