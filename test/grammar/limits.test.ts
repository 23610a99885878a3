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
    ["of quotes", '"'.repeat(1e6)],
    ["of open brackets", `lift${"[".repeat(1e6)}`],
    ["of open brackets with words", "lift[in ".repeat(1.2e5)],
    ["of one bracket with words", `lift[${"in ".repeat(3e5)}]`],
    ["of words", "valve ".repeat(1.6e5)],
    ["of cells", "0.1 ".repeat(2.5e5)],
    ["of void", `0.1 ${"void ".repeat(2e5)}`],
    ["of blanks", " ".repeat(1e6)],
    ["of comment marks", "# ".repeat(5e5)],
    ["of NUL", "\0".repeat(1e5)],
    ["of lone surrogates", "\uD83D ".repeat(5e5)],
  ])("%s is read", (_, line) => checkReads(`headnote 1\nrun r\n${line}\n`));
});

describe("a hundred thousand lines", () => {
  test.each([
    ["rows", "0.1 28.0 58.4\n"],
    ["unknown words", "frobnicate 2\n"],
    ["headings", "run r\n"],
    ["lines that are heading or property", "bench b\n"],
    ["misspelt headings", "  rnu r\n"],
  ])("of %s are read", (_, line) => {
    checkReads(`headnote 1\nrun r\nlift[in] depression[inH2O] flow[cfm]\n${line.repeat(1e5)}`);
  });

  test("twice the rows take about twice the time", () => {
    const head = "headnote 1\nrun r\nlift[in] depression[inH2O] flow[cfm]\n";
    const rows = (count: number) => outlineOf(head + "0.1 28.0 58.4\n".repeat(count)).blocks[0]?.block.entity;
    expect(rows(1e5)).toMatchObject({ table: { rows: { length: 1e5 } } });
  });
});

test("findings of a file of nothing but faults are as many as its faults", () => {
  const text = `headnote 1\nport p\n  side intake\n  valve 2 in\n${"  section a 2,5\n".repeat(1000)}`;
  expect(readingFindings(outlineOf(text))).toHaveLength(2000);
});
