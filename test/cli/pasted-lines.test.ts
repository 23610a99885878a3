// The lines that `bench` suggests are pasted into the blocks of the samples' benches, and read back.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";
import { expect, test } from "vitest";
import type { BenchDocument } from "../../shared/messages/bench-report.ts";
import { inShop } from "../kit/command.ts";

const SAMPLES = join(import.meta.dirname, "../../samples");
const files = Object.fromEntries(
  globSync("**/*", { cwd: SAMPLES }).map((path) => [path, readFileSync(join(SAMPLES, path), "utf8")]),
);

/** A shop with lines in a bench's block in place of those of the same keywords. */
function pasted(shop: string, bench: string, lines: readonly string[]): string {
  const keywords = lines.map((line) => line.split(" ")[0] ?? "");
  const [before = "", rest = ""] = shop.split(new RegExp(`(?<=^bench ${bench}\\b.*\\n)`, "m"));
  const end = rest.search(/^\S/m);
  const block = rest.slice(0, end < 0 ? rest.length : end).split("\n");
  const kept = block.filter((line) => !keywords.includes(line.trim().split(" ")[0] ?? ""));
  return `${before}${lines.map((line) => `  ${line}\n`).join("")}${kept.join("\n")}${end < 0 ? "" : rest.slice(end)}`;
}

test("every suggested line can be pasted as it stands, and is then what the block states", async () => {
  await inShop(files, async ({ headnote, read, write }) => {
    const report = async () =>
      JSON.parse((await headnote(["bench", ".", "--format", "json"])).out) as BenchDocument;
    const before = await report();
    let count = 0;
    for (const { id, suggestions } of before.benches) {
      const lines = suggestions.flatMap(({ line }) => line ?? []);
      count += lines.length;
      const owner = Object.keys(files).find((path) => new RegExp(`^bench ${id}\\b`, "m").test(read(path)));
      if (owner === undefined) throw new RangeError(`no bench ${id}`);
      write(owner, pasted(read(owner), id, lines));
    }
    expect(count).toBeGreaterThan(10);
    expect((await headnote(["format", "--check", "."])).out).toBe("");
    expect((await headnote(["check", "."])).code).toBe(0);
    for (const { id, suggestions } of (await report()).benches) {
      for (const { keyword, line, reason } of suggestions) {
        // What was suggested is suggested again, and stated.
        if (line === null) continue;
        expect(reason, `${id} ${keyword}`).toContain(`the block states ${line.slice(11)}`);
      }
    }
  });
});
