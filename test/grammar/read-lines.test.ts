// After an edit only what changed is read again, and the outcome is the same as reading everything.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outline } from "../../grammar/outline.ts";
import { readLines } from "../../grammar/read-lines.ts";
import { brokenText, carelessFile } from "../kit/arbitraries.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

interface Change {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(400),
  remove: fc.nat(12),
  insert: fc.oneof(
    fc.constantFrom("", "\n", "\r", "\r\n", "\n\r", '"', "#", " ", "run r9\n", "0.1 28\r\n", "bench b"),
    brokenText.map((text) => text.slice(0, 40)),
  ),
});

function changed(text: string, { at, remove, insert }: Change): string {
  const from = Math.min(at, text.length);
  return text.slice(0, from) + insert + text.slice(from + remove);
}

describe("reading after edits", () => {
  test("gives what reading the whole text gives, for any script of edits", () => {
    fc.assert(
      fc.property(
        fc.oneof(carelessFile, brokenText),
        fc.array(change, { minLength: 1, maxLength: 4 }),
        (start, script) => {
          let text = start;
          let lines = readLines(text);
          outline(lines);
          for (const edit of script) {
            const before = { text, lines };
            text = changed(text, edit);
            lines = readLines(text, before);
            expect(lines).toEqual(readLines(text));
            const [again, whole] = [outline(lines), outlineOf(text)];
            expect(again.blocks.map(({ start, block }) => [start, block.entity, block.uses])).toEqual(
              whole.blocks.map(({ start, block }) => [start, block.entity, block.uses]),
            );
            expect(readingFindings(again)).toEqual(readingFindings(whole));
            expect([again.includes, again.conflicted]).toEqual([whole.includes, whole.conflicted]);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("keeps the nodes of lines that did not change, and the blocks made of them", () => {
    const text = "headnote 1\nhead a\nrun r\n  cylinder 1\nrun s\n  cylinder 2\n";
    const before = readLines(text);
    const after = readLines("headnote 1\nhead a\nrun r\n\n  cylinder 3\nrun s\n  cylinder 2\n", {
      text,
      lines: before,
    });
    expect([0, 1, 2].map((i) => after[i] === before[i])).toEqual([true, true, true]);
    const [old, now] = [outline(before), outline(after)];
    expect(now.blocks.map(({ block }, i) => block === old.blocks[i]?.block)).toEqual([true, false, true]);
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
