// Each kind of finding is shown by its own examples: the bad one reports it and nothing else, the good one nothing.
import { describe, expect, test } from "vitest";
import { GRAMMAR_FINDINGS } from "../../grammar/findings/index.ts";
import { applyEdits } from "../../shared/text/edit.ts";
import { outlineOf, readingFindings, readingMessages } from "../kit/check.ts";

const codesOf = (text: string) => readingFindings(outlineOf(text)).map(({ code }) => code);

describe.each(GRAMMAR_FINDINGS)("$code", ({ code, bad, good, what, why }) => {
  test("is all that its bad example reports", () => {
    expect(codesOf(bad)).toEqual([code]);
  });

  test("is not in its good example, nor is any other", () => {
    expect(codesOf(good)).toEqual([]);
  });

  test("is gone after its fix, if it has one", () => {
    for (const { fix } of readingFindings(outlineOf(bad))) {
      if (fix === undefined) continue;
      expect(codesOf(applyEdits(bad.split("\n"), fix.edits).join("\n"))).not.toContain(code);
    }
  });

  test("says what is wrong and what to do in whole words", () => {
    for (const words of [...readingMessages(bad), what, why]) {
      expect(words).not.toMatch(/undefined|null|NaN|\bobject\b|''/);
    }
  });
});

test("no two kinds share a code", () => {
  const codes = GRAMMAR_FINDINGS.map(({ code }) => code);
  expect(new Set(codes).size).toBe(codes.length);
});
