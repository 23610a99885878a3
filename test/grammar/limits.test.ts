// Files of any size and any content are read without throwing, in time that grows with their length only.
import { describe, expect, test } from "vitest";
import { format } from "../../grammar/format.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

function checkReads(text: string): void {
  expect(outlineOf(text).lines.length).toBeGreaterThan(0);
  format(text);
}

describe("a line of a million characters", () => {
  test.each([
    ["of one word", "a".repeat(1e6)],
    ["of one number", "1".repeat(1e6)],
    ["of one open text", `note "${"a\\".repeat(5e5)}`],
    ["of one closed text", `note "${'\\"'.repeat(5e5)}"`],
    ["of words", "valve ".repeat(1.6e5)],
    ["of cells", "0.1 ".repeat(2.5e5)],
    ["of blanks", " ".repeat(1e6)],
    ["of comment marks", "# ".repeat(5e5)],
  ])("%s is read", (_, line) => checkReads(`headnote 1\nrun r\n${line}\n`));
});

describe("a line of a hundred thousand faults", () => {
  test.each([
    ["quotes", '"'.repeat(1e5)],
    ["open brackets", `lift${"[".repeat(1e5)}`],
    ["open brackets with words", "lift[in ".repeat(1e5)],
    ["void", `0.1 ${"void ".repeat(1e5)}`],
    ["NUL", "\0".repeat(1e5)],
    ["lone surrogates", "\uD83D ".repeat(1e5)],
  ])("of %s is read", (_, line) => checkReads(`headnote 1\nrun r\n${line}\n`));
});

describe("very many lines", () => {
  test.each([
    ["rows", "0.1 28.0 58.4\n", 1e5],
    ["unknown words", "frobnicate 2\n", 2e4],
    ["headings", "run r\n", 2e4],
    ["lines that are heading or property", "bench b\n", 2e4],
    ["misspelt headings", "  rnu r\n", 2e4],
  ])("of %s are read", (_, line, count) => {
    checkReads(`headnote 1\nrun r\nlift[in] depression[inH2O] flow[cfm]\n${line.repeat(count)}`);
  });
});

test("findings of a file of nothing but faults are as many as its faults", () => {
  const text = `headnote 1\nport p\n  side intake\n  valve 2 in\n${"  section a 2,5\n".repeat(1000)}`;
  expect(readingFindings(outlineOf(text))).toHaveLength(2000);
});
