// The formatter moves blanks and writes line ends alike, and changes nothing else, ever.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { format, formatLines } from "../../grammar/format.ts";
import { lexLine } from "../../grammar/lexer.ts";
import { lineEndOf, splitLines } from "../../shared/text/lines.ts";
import { anyUnits, brokenText, carelessFile } from "../kit/arbitraries.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

const anyFile = fc.oneof(carelessFile, brokenText, anyUnits(200));

function checkFormat(text: string, expected: string): void {
  expect(format(text)).toBe(expected);
  expect(format(expected)).toBe(expected);
}

/** Every token of a line but its blanks. */
function tokensOf(line: string): string[] {
  return lexLine(line)
    .filter(({ tokenType }) => tokenType.name !== "WhiteSpace")
    .map(
      ({ tokenType, image }) => `${tokenType.name} ${tokenType.name === "Comment" ? image.trimEnd() : image}`,
    );
}

/** What a file says, without where it says it. */
function meaningOf(text: string): unknown {
  const read = outlineOf(text);
  return {
    entities: read.blocks.map(({ block }) => withoutPlaces(block.entity)),
    includes: read.includes.map(({ path }) => path),
    findings: readingFindings(read).map(({ code, span, args }) => [code, span.line, args]),
  };
}

function withoutPlaces(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (key, inner: unknown) =>
      ["from", "to", "bounds", "text", "span", "origin"].includes(key) ? undefined : inner,
    ),
  );
}

describe("canonical form", () => {
  test("indents lines by two, puts values at their stop and aligns cells with the ends of their heads", () => {
    checkFormat(
      `headnote   1
 include  "../shop.headnote"

   run i3-as-cast    "as  cast"
port  a114-intake #  of the third
lift-setting-of-mine 1
cylinder 3
      # indented
# at the margin
\t
lift [ in ] depression[inH2O]  flow[cfm]
0.100 28.0 58.4 # first
0.500 28.0 226.1    "heard it tear"
0.600 - 224.9  "again"   void     "belt slipped"
0.600 28.000000000000000000 224.9
0.700 28.0 1 2 void`,
      `headnote 1
include "../shop.headnote"

run i3-as-cast "as  cast"
  port       a114-intake  #  of the third
lift-setting-of-mine 1
  cylinder   3
  # indented
# at the margin

  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       58.4  # first
     0.500               28.0      226.1  "heard it tear"
     0.600                  -      224.9  "again"  void "belt slipped"
     0.600  28.000000000000000000  224.9
     0.700               28.0          1  2  void
`,
    );
  });

  test("gives a keyword of eleven letters or more one blank before its value", () => {
    checkFormat(
      "headnote 1\nbench b\nshows flow\nuncertainty   0.6 %\nlift-setting\t0.001 in",
      "headnote 1\nbench b\n  shows      flow\n  uncertainty 0.6 %\n  lift-setting 0.001 in\n",
    );
  });

  test("keeps an inch mark with its number", () => {
    checkFormat(
      'headnote 1\nport p\nside intake\nvalve  2.020"\nstem 11/32"   # thin',
      'headnote 1\nport p\n  side       intake\n  valve      2.020"\n  stem       11/32"  # thin\n',
    );
    checkFormat(
      'headnote 1\nrun r\nlift["] depression["H2O]\n0.300" 28.0',
      'headnote 1\nrun r\n  lift["]  depression["H2O]\n   0.300"              28.0\n',
    );
  });

  test("aligns rows whose first cell is a choice", () => {
    checkFormat(
      "headnote 1\nplate-check p\nrange depression[inH2O] reading[%]\nhigh 28.0 93.0\nlow 28.0 -",
      "headnote 1\nplate-check p\n  range  depression[inH2O]  reading[%]\n   high               28.0        93.0\n    low               28.0           -\n",
    );
  });

  test("is written with the line end that the file uses first, and keeps a byte order mark", () => {
    checkFormat("\uFEFFheadnote  1\r\nhead a\nengine  e", "\uFEFFheadnote 1\r\nhead a\r\n  engine     e\r\n");
    checkFormat("headnote 1\r# a  \r\r\n", "headnote 1\r# a\r\r");
    checkFormat("", "");
    checkFormat("  \n\n", "\n\n");
  });

  test.each([
    ["an open text", '   head a  "iron'],
    ["an unknown keyword", "   frobnicate   2  3 "],
    ["a misplaced line", "   bore   2 in "],
    ["a stray bracket", "   head   a  ] "],
    ["a keyword of the user's own", "   x-shop   2  3 "],
    ["a row without a head", "   0.300    28.0 "],
    ["a word that a blank would make a comment", '   head   a   "b"#c '],
  ])("leaves %s as it is", (_, line) => {
    checkFormat(`headnote 1\nhead a\n${line}\n`, `headnote 1\nhead a\n${line}\n`);
  });

  test("leaves a table alone whose head is not understood, and rows above the head", () => {
    const open = "headnote 1\nrun r\n lift[in  depression[inH2O]\n  0.1 28\n";
    checkFormat(open, open);
    const early = "headnote 1\nrun r\n   0.1 28\n  lift[in]  depression[inH2O]\n";
    checkFormat(early, early);
  });

  test("does not touch a file with conflict markers", () => {
    expect(format("headnote   1\n<<<<<<< mine\n  head a\n=======\nhead b\n>>>>>>> theirs\n")).toBeUndefined();
  });

  test("can be had for some of the lines", () => {
    fc.assert(
      fc.property(carelessFile, fc.nat(12), fc.nat(12), (text, from, count) => {
        const read = outlineOf(text);
        const all = formatLines(read, 0, read.lines.length);
        expect(formatLines(read, from, from + count)).toEqual(all.slice(from, from + count));
      }),
      { numRuns: 100 },
    );
  });
});

describe("formatting", () => {
  test("changes blanks and line ends and nothing else", () => {
    fc.assert(
      fc.property(anyFile, (text) => {
        const formatted = format(text);
        if (formatted === undefined) return;
        const before = splitLines(text);
        const after = splitLines(formatted);
        expect(after.slice(before.length)).toEqual(after.length === before.length ? [] : [""]);
        before.forEach((line, index) => {
          expect(tokensOf(after[index] ?? "")).toEqual(tokensOf(line));
        });
      }),
      { numRuns: 300 },
    );
  });

  test("twice is formatting once", () => {
    fc.assert(
      fc.property(anyFile, (text) => {
        const once = format(text);
        if (once !== undefined) expect(format(once)).toBe(once);
      }),
      { numRuns: 300 },
    );
  });

  test("leaves one line end, no blanks at line ends and no tabs in lines that are read", () => {
    fc.assert(
      fc.property(carelessFile, (text) => {
        const formatted = format(text) ?? "";
        expect(formatted === "" || formatted.endsWith(lineEndOf(text))).toBe(true);
        for (const line of splitLines(formatted)) {
          if (!line.trimStart().startsWith("x-")) expect(line).not.toMatch(/[ \t]$|^\s*\t/);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("does not change what findings quote", () => {
    for (const text of [
      'include "a.headnote" cam  $',
      "run r1\n  note as  cast",
      "port p\n  stem 8 mm  9  mm",
    ]) {
      expect(meaningOf(format(text) ?? "")).toEqual(meaningOf(text));
    }
  });

  test("does not change what a file says", () => {
    fc.assert(
      fc.property(anyFile, (text) => {
        const formatted = format(text);
        if (formatted !== undefined) expect(meaningOf(formatted)).toEqual(meaningOf(text));
      }),
      { numRuns: 200 },
    );
  });
});
