// After an edit only what changed is read again, and the outcome is the same as reading everything.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_MEMORY } from "../../grammar/lower-block.ts";
import { outline } from "../../grammar/outline.ts";
import { readLines, readText } from "../../grammar/read-lines.ts";
import { lineStarts } from "../../shared/text/lines.ts";
import { brokenText, carelessFile } from "../kit/arbitraries.ts";
import { outlineOf } from "../kit/check.ts";
import { changed, textChange } from "../kit/text-changes.ts";

/** Long enough that an edit has blocks far above and far below it. */
const longText = fc
  .array(fc.oneof({ weight: 4, arbitrary: carelessFile }, brokenText), { minLength: 1, maxLength: 30 })
  .map((texts) => texts.join("\n"));

describe("reading after edits", () => {
  test("gives what reading the whole text gives, for any script of edits", () => {
    fc.assert(
      fc.property(longText, fc.array(textChange(), { minLength: 1, maxLength: 4 }), (start, script) => {
        let text = start;
        let read = readText(text);
        let again = outline(read.lines);
        for (const edit of script) {
          text = changed(text, edit);
          read = readText(text, read);
          expect(read).toEqual({ text, lines: readLines(text), starts: lineStarts(text) });
          again = outline(read.lines, NO_MEMORY, again);
          expect(again).toEqual(outline(read.lines, NO_MEMORY));
        }
      }),
      { numRuns: 60 },
    );
  });

  test("keeps the nodes of lines that did not change, and the blocks made of them", () => {
    const text = "headnote 1\nhead a\nrun r\n  cylinder 1\nrun s\n  cylinder 2\n";
    const before = readText(text);
    const after = readText("headnote 1\nhead a\nrun r\n\n  cylinder 3\nrun s\n  cylinder 2\n", before);
    expect([0, 1, 2].map((i) => after.lines[i] === before.lines[i])).toEqual([true, true, true]);
    const [old, now] = [outline(before.lines), outline(after.lines)];
    expect(now.blocks.map(({ block }, i) => block === old.blocks[i]?.block)).toEqual([true, false, true]);
  });

  test("misses the version line where it was taken away above a block that stays as it was", () => {
    const read = readText("headnote 1\nbench b\nshows flow\n");
    const after = readText("bench b\nshows flow\n", read);
    const again = outline(after.lines, NO_MEMORY, outline(read.lines));
    expect(again).toEqual(outline(after.lines, NO_MEMORY));
    expect(again.findings.map(({ code }) => code)).toEqual(["version"]);
  });

  test("keep nothing of the texts that they were made to", () => {
    setFlagsFromString("--expose-gc");
    const collect = runInNewContext("gc") as () => void;
    const used = () => {
      collect();
      return process.memoryUsage().heapUsed;
    };
    const row = `  0.100  28.0  ${"55.0  ".repeat(20)}\n`;
    let read = readText(`headnote 1\nrun r\n${row.repeat(10_000)}`);
    const edit = (index: number) => {
      const at = (index + 1) * 100 * row.length;
      read = readText(`${read.text.slice(0, at)}# a remark of some length${read.text.slice(at)}`, read);
    };
    edit(0);
    const before = used();
    for (let index = 1; index < 60; index++) edit(index);
    // One such text is more than a megabyte.
    expect(used() - before).toBeLessThan(10e6);
  });

  test("line ends do not matter to what is read", () => {
    fc.assert(
      fc.property(carelessFile, (text) => {
        const lines = text.split(/\r\n|\n|\r/);
        const [unix, dos, old] = ["\n", "\r\n", "\r"].map((end) => outlineOf(lines.join(end)));
        expect(dos).toEqual(unix);
        expect(old).toEqual(unix);
      }),
      { numRuns: 60 },
    );
  });
});
