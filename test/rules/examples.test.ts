// Every kind of finding is shown by its own examples, judged as whole records: set-up, results and all.
import { describe, expect, test } from "vitest";
import { KINDS } from "../../server/catalogue.ts";
import { exampleFiles, judgeExample } from "../../server/generate/example.ts";
import type { Judged } from "../../server/service/findings.ts";
import { applyEdits } from "../../shared/text/edit.ts";

const codes = (judged: readonly Judged[]) => judged.map(({ finding }) => finding.code);

/** The example with its first file mended. */
function mended(example: string, { finding }: Judged): string {
  const lines = example.split("\n");
  return finding.fix === undefined ? example : applyEdits(lines, finding.fix.edits).join("\n");
}

describe.each(KINDS)("$code", ({ code, severity, bad, good, what, why }) => {
  test("is all that its bad example gives, as heavy as it says", () => {
    const found = judgeExample(bad);
    expect(codes(found)).toEqual([code]);
    expect(found[0]?.severity).toBe(severity);
  });

  test("is not in its good example, nor is any other", () => {
    expect(codes(judgeExample(good))).toEqual([]);
  });

  test("is gone after its fix, if it has one", () => {
    for (const judged of judgeExample(bad)) {
      if (judged.finding.fix === undefined) continue;
      expect(codes(judgeExample(mended(bad, judged)))).not.toContain(code);
    }
  });

  test("says what is wrong and what to do in whole words", () => {
    for (const { message, help, finding } of judgeExample(bad)) {
      const related = finding.related.map((place) => place.message);
      for (const words of [message, help, what, why, ...related]) {
        expect(words).not.toBe("");
        expect(words).not.toMatch(/undefined|null|NaN|Infinity|\bobject\b|''/);
      }
    }
  });

  test("points to a place in its file", () => {
    const lines = exampleFiles(bad)[0]?.text.split("\n") ?? [];
    for (const { finding } of judgeExample(bad)) {
      for (const { line, from, to } of [finding.span, ...finding.related.map(({ span }) => span)]) {
        expect(from).toBeLessThanOrEqual(to);
        expect(to).toBeLessThanOrEqual(lines[line]?.length ?? -1);
      }
    }
  });
});
