// Lines fold into blocks: what opens one, what belongs to it, and how little a broken line takes with it.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outline } from "../../grammar/outline.ts";
import { anyUnits, brokenText, carelessFile, fileBlocks } from "../kit/arbitraries.ts";
import { checkReading, outlineOf, readingFindings, readingMessages } from "../kit/check.ts";

/** The blocks in one line each: what opens them and how many lines they have. */
function blocksOf({ blocks }: Outline): string[] {
  return blocks.map(({ start, block }) => `${start} ${block.entity.kind} ${block.lines.length}`);
}

function checkBlocks(text: string, ...expected: string[]): void {
  expect(blocksOf(outlineOf(`headnote 1\n${text}`))).toEqual(expected);
}

describe("a keyword that opens a block and also stands in one", () => {
  test("is a property where nothing below speaks against it", () => {
    checkBlocks("session 2026-11-20\nbench b\nport p\nrun r", "1 session 3", "4 run 1");
    checkBlocks('head a\nengine e\ncasting "x"', "1 head 3");
  });

  test("is a heading where it has a title", () => {
    checkBlocks('session 2026-11-20\nbench b "by the wall"', "1 session 1", "2 bench 1");
  });

  test("is a heading where the lines below belong to it, even behind comments, blank and unknown lines", () => {
    checkBlocks(
      "session 2026-11-20\nport p\n\n# c\nfrobnicate\nx-a b\nside intake",
      "1 session 1",
      "2 port 6",
    );
    checkBlocks("run r\nbench b\nwithin 0.2 inH2O\nsettle 1.6 s", "1 run 1", "2 bench 3");
    checkBlocks("engine e\ncam c\nangle[deg] lift[in]\n0 0", "1 engine 1", "2 cam 3");
    checkBlocks("engine e\ncam c\ncam d\nside intake", "1 engine 2", "3 cam 2");
  });
});

describe("a misspelt heading", () => {
  test("opens its block where it stands at the margin or the lines below it say so", () => {
    checkBlocks("run r\nrum s\n  cylinder 1", "1 run 1", "2 run 2");
    checkBlocks("port p\n  prot q\n  side intake\ncma c\n  law p345", "1 port 3", "4 cam 2");
  });

  test("does not where it stands among the lines of a block", () => {
    checkBlocks("port p\n  side intake\n  cap 3 mm\n  valve 2.020 in", "1 port 4");
  });
});

describe("what has no place", () => {
  test("is reported where it stands, and nothing else is", () => {
    checkReading(`
      # a comment may stand above the version line
      headnote 1
      headnote 1
      #<^^^^^^^^ error[misplaced-line]
      0.1 28
      #<^^^^ error[misplaced-line]
      lift[in]  flow[cfm]
      #<^^^^^^^^^^^^^^^^^ error[misplaced-line]
      valve 2.02 in
      #<^^^^^^^^^^^ error[misplaced-line]
      include
      #<^^^^^ error[missing-value]
      include shop.headnote
      #       ^^^^^^^^^^^^^ error[extra-value]
      include "a.headnote" "b.headnote"
      #                    ^^^^^^^^^^^^ error[extra-value]
      x-shop anything "at all
      head a
        valve 2.02 in
      # ^^^^^^^^^^^^^ error[misplaced-line]
        0.1 28
      # ^^^^^^ error[misplaced-line]
        lift[in]  flow[cfm]
      # ^^^^^^^^^^^^^^^^^^^ error[misplaced-line]
        frobnicate 2
      # ^^^^^^^^^^ warning[unknown-keyword]
        casting "114"
        casting "115"
      # ^^^^^^^^^^^^^ error[repeated-line]
    `);
  });

  test.each([
    ["valve 2.02 in", "'valve' cannot stand before the first heading; move it; it belongs in port"],
    ["head a\nspeed 1 rpm", "'speed' cannot stand in a head block; move it; it belongs in engine"],
    [
      "head a\n0.1 28",
      "a row of readings cannot stand in a head block; move it; it belongs below a run and its columns",
    ],
    ["include", "'include' needs a path in quotes; the line reads: include \"path\""],
    [
      "run r\n0.1 28",
      "this run has no line that names its columns; name the columns and their units above the rows, such as lift[in]  depression[inH2O]",
    ],
    [
      "run r\nlift[in]\n0.1",
      "this run has no column depression; name the columns and their units above the rows, such as depression[inH2O]",
    ],
  ])("%s says what to do", (text, expected) =>
    expect(readingMessages(`headnote 1\n${text}`)).toEqual([expected]),
  );
});

describe("the version line", () => {
  test.each([
    ["headnote 1", []],
    ["\uFEFFheadnote 1", []],
    ["", []],
    ["# c\n\n  headnote 1 # c", []],
    ["headnote 2", ["version"]],
    ["headnote", ["version"]],
    ["headnote 1.0", ["version"]],
    ["headnote 1 2", ["version"]],
    ["headnot 1\nhead a", ["unknown-keyword"]],
    ["head a", ["version"]],
    ["<<<<<<< a\nheadnote 1", ["conflict-marker"]],
  ])("%j reports %j", (text, codes) => {
    expect(readingFindings(outlineOf(text)).map(({ code }) => code)).toEqual(codes);
  });

  test("of a newer format does not keep the rest from being read", () => {
    expect(blocksOf(outlineOf("headnote 7\nhead a\n"))).toEqual(["1 head 2"]);
  });
});

describe("a table", () => {
  test("takes choices as they are, and numbers only where its column has a unit", () => {
    checkReading(`
      headnote 1
      plate-check p
        range  depression[inH2O]  reading[%]  remark[s]
      #                                       ^^^^^^ warning[unknown-column]
        300cfm  28.0  93.0   ok
        low     -     9,0    2
      #               ^^^ error[decimal-comma]
        2       28in  high   -
      #         ^^^^ error[number-form]
      #               ^^^^ error[number-form]
        high    28.0
      # ^^^^^^^^^^^^ error[missing-cell]
        high    28.0  93.0   1  2
      #                         ^ error[extra-cell]
    `);
  });

  test("has one head, above its rows, with each column once", () => {
    checkReading(`
      headnote 1
      run r
        0.1  28
      # ^^^^^^^ error[misplaced-line]
        lift[in]  depression[inH2O]  lift[mm]  flow[]  range[cfm]
      #                              ^^^^ error[repeated-line]
      #                                        ^^^^ error[missing-unit]
      #                                                ^^^^^ error[extra-value]
        0.1  28  2  3  low
        lift[in]  depression[inH2O]
      # ^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[repeated-line]
        0.2  28  2  3  low
    `);
  });

  test("keeps a row whose first number is misspelt", () => {
    checkReading(`
      headnote 1
      run r
        lift[in]  depression[inH2O]  flow[cfm]
        O.100     28.0               58.4
      # ^^^^^ error[number-form]
        –         28.0               58.4
      # ^ error[number-form]
        ,100      28.0               58.4
      # ^^^^ error[decimal-comma]
    `);
  });
});

describe("any file", () => {
  test("is folded without throwing, every finding inside its line", () => {
    fc.assert(
      fc.property(fc.oneof(brokenText, anyUnits(200)), (text) => {
        const read = outlineOf(text);
        for (const { span, fix, related } of readingFindings(read)) {
          const spans = [
            span,
            ...related.map((other) => other.span),
            ...(fix?.edits ?? []).map((edit) => edit.span),
          ];
          for (const { line, from, to } of spans) {
            expect(from).toBeGreaterThanOrEqual(0);
            expect(to).toBeGreaterThanOrEqual(from);
            expect(to).toBeLessThanOrEqual(read.lines[line]?.text.length ?? -1);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  test("that is valid has no findings", () => {
    fc.assert(
      fc.property(carelessFile, (text) => {
        expect(readingFindings(outlineOf(text))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test("says the same whatever the order of its blocks", () => {
    const entities = (blocks: readonly (readonly string[])[]) =>
      outlineOf(["headnote 1", ...blocks.flat()].join("\n"))
        .blocks.map(({ block }) => JSON.stringify(block.entity))
        .sort();
    fc.assert(
      fc.property(
        fileBlocks.chain((blocks) =>
          fc.tuple(fc.constant(blocks), fc.shuffledSubarray(blocks, { minLength: blocks.length })),
        ),
        ([blocks, permuted]) => {
          expect(entities(permuted)).toEqual(entities(blocks));
          expect(entities(blocks)).toHaveLength(blocks.length);
        },
      ),
      { numRuns: 150 },
    );
  });

  test("with one broken line has new findings in that line's block only", () => {
    const byBlock = (read: Outline) =>
      read.blocks.map(({ start, block }) => {
        const here = readingFindings(read).filter(
          ({ span }) => span.line >= start && span.line < start + block.lines.length,
        );
        return JSON.stringify(here.map(({ code, span }) => [code, span.line - start, span.from]));
      });
    fc.assert(
      fc.property(fileBlocks.map(titled), fc.nat(), fc.nat(), anyUnits(4), (blocks, which, where, junk) => {
        const block = which % Math.max(1, blocks.length);
        const lines = blocks[block] ?? [];
        if (lines.length < 2) return;
        const at = 1 + (where % (lines.length - 1));
        const line = lines[at] ?? "";
        const cut = where % (line.length + 1);
        // Indented, as the lines of a block are, and still one line.
        const broken = `  ${line.slice(0, cut)}${junk.replace(/[\r\n]/g, "")}${line.slice(cut + 1)}`;
        if (opensSomething(broken)) return;
        const changed = blocks.map((other, index) => (index === block ? lines.with(at, broken) : other));
        const before = byBlock(outlineOf(["headnote 1", ...blocks.flat()].join("\n")));
        const after = byBlock(outlineOf(["headnote 1", ...changed.flat()].join("\n")));
        expect(after.filter((_, index) => index !== block)).toEqual(
          before.filter((_, index) => index !== block),
        );
      }),
      { numRuns: 150 },
    );
  });
});

/** A line that has become a heading starts a block of its own: that is no broken line. */
function opensSomething(line: string): boolean {
  return (
    outlineOf(`headnote 1\nhead a\n${line}`).blocks.length > 1 ||
    outlineOf(`headnote 1\n${line}`).blocks.length > 0
  );
}

/** With titles no heading depends on the lines below it to be told from a property. */
function titled(blocks: readonly (readonly string[])[]): string[][] {
  return blocks.map(([heading = "", ...lines]) => [
    /^(?:bench|port|engine|cam) [^"]*$/.test(heading) ? `${heading} "title"` : heading,
    ...lines,
  ]);
}
