// Sizes of what is shipped; the build runs before the tests. Times are measured by `npm run bench`, not here.
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { packedFiles } from "./kit/packed-files.ts";

const ROOT = join(import.meta.dirname, "..");
const DIST = join(ROOT, "dist");
const kB = 1000;

function sizeOf(files: Iterable<string>): number {
  return [...files].reduce((sum, file) => sum + statSync(join(DIST, file)).size, 0);
}

describe("the command", () => {
  test("starts with less than what draws, or than the server", () => {
    expect(sizeOf(["cli.cjs", "command.cjs"])).toBeLessThan(650 * kB);
    for (const apart of ["draw.cjs", "serve.cjs"]) expect(sizeOf([apart])).toBeGreaterThan(700 * kB);
  });
});

describe("the extension", () => {
  test("is a small download", () => {
    const sizes = packedFiles().map((file) => deflateRawSync(readFileSync(join(ROOT, file))).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(1000 * kB);
  });

  test("is active after little has been loaded; the language client comes behind it in a file of its own", () => {
    expect(sizeOf(["extension.cjs"])).toBeLessThan(60 * kB);
    expect(sizeOf(["node-client.cjs"])).toBeLessThan(445 * kB);
  });

  test("is one file for browsers, where editors load no second one: as large as both", () => {
    expect(sizeOf(["web/extension.cjs"])).toBeLessThan(465 * kB);
  });

  test("has a preview whose page is little more than what draws", () => {
    expect(sizeOf(["preview/page.js"])).toBeLessThan(730 * kB);
    expect(sizeOf(["preview/page.css"])).toBeLessThan(8 * kB);
  });
});
