// Checks that read like their fixtures; each is the only caller of the interface that it checks.
import { expect } from "vitest";
import { GRAMMAR_FINDINGS } from "../../grammar/findings/index.ts";
import { type Outline, outline } from "../../grammar/outline.ts";
import { readLines } from "../../grammar/read-lines.ts";
import { type Finding, shiftedFinding } from "../../shared/finding.ts";
import { parseFixture, withMarks } from "./fixture.ts";

/** The outline of a text. */
export function outlineOf(text: string): Outline {
  return outline(readLines(text));
}

/** Everything that reading the file alone reports, in the order of the lines; spans count from the file's first line. */
export function readingFindings(read: Outline): Finding[] {
  const inBlocks = read.blocks.flatMap(({ start, block }) =>
    block.findings.map((finding) => shiftedFinding(finding, start)),
  );
  return [...read.findings, ...inBlocks].sort(
    (a, b) => a.span.line - b.span.line || a.span.from - b.span.from,
  );
}

/** Checks the complete set of findings that reading each file of a fixture alone gives. */
export function checkReading(fixture: string): void {
  for (const { path, text, marks } of parseFixture(fixture)) {
    const found = readingFindings(outlineOf(text)).map(({ code, span }) => ({
      ...span,
      code,
      severity: severityOf(code),
    }));
    expect(withMarks(text, found), path).toBe(withMarks(text, marks));
  }
}

/** The severity of a finding of the grammar. */
export function severityOf(code: string): string {
  return GRAMMAR_FINDINGS.find((kind) => kind.code === code)?.severity ?? "unknown code";
}

/** The words of the findings of a text, `message; help` each. */
export function readingMessages(text: string): string[] {
  return readingFindings(outlineOf(text)).map(({ code, args }) => {
    const kind = GRAMMAR_FINDINGS.find((candidate) => candidate.code === code);
    // A finding carries the arguments that its own kind asks for.
    return kind === undefined ? code : `${kind.message(args as never)}; ${kind.help(args as never)}`;
  });
}
