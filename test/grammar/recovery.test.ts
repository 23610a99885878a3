// A slip of the keyboard costs the line it is in, and how often it costs more is counted so that it cannot get worse.
import { describe, expect, test } from "vitest";
import { checkReading, outlineOf, readingFindings } from "../kit/check.ts";

const RECORD = `headnote 1
bench north "six motors"
  shows      flow at 28 inH2O
  repeat     0.35 %
  settle     1.6 s
port a114-intake
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  section    pinch 2.05 in2
session 2026-11-20T09:30+01:00 "as cast"
  bench      north
  air        71.5 degF 29.18 inHg 42 %RH
  leak       1.8 cfm at 28 inH2O
run i3-as-cast
  port       a114-intake
  cylinder   3
  stage      "as cast"
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
     0.100               28.0       58.4        1.4
     0.200               28.0      125.6          -
     0.300               27.9      187.4        1.5  "heard it tear"
     0.400               28.0      229.8        1.5  void "belt"
run i3-short-side
  baseline   i3-as-cast
  range  depression[inH2O]  lift[in]
   high               28.0     0.100
    low               28.0     0.200
`;

/** Each way in which a line is broken, by name. */
const SLIPS: Readonly<Record<string, (line: string) => readonly string[]>> = {
  "a letter lost": (line) => letters(line).map((at) => line.slice(0, at) + line.slice(at + 1)),
  "a letter doubled": (line) => letters(line).map((at) => line.slice(0, at + 1) + line.slice(at)),
  "two letters swapped": (line) =>
    letters(line).map(
      (at) => line.slice(0, at) + (line[at + 1] ?? "") + (line[at] ?? "") + line.slice(at + 2),
    ),
  "a stray quote": (line) => letters(line).map((at) => `${line.slice(0, at)}"${line.slice(at)}`),
  "a stray bracket": (line) => letters(line).map((at) => `${line.slice(0, at)}[${line.slice(at)}`),
  "a blank too many": (line) => letters(line).map((at) => `${line.slice(0, at)} ${line.slice(at)}`),
  "a line cut short": (line) => letters(line).map((at) => line.slice(0, at)),
};

function letters(line: string): number[] {
  return [...line].flatMap((letter, at) => (letter.trim() === "" ? [] : [at]));
}

/**
 * Share, in per cent, of all broken versions of the record in which no line but the broken one has a finding. A heading
 * that is lost takes its lines with it, and a head of columns its rows, so that the score is below 100.
 */
function scoreOf(slip: (line: string) => readonly string[]): number {
  const lines = RECORD.split("\n");
  let contained = 0;
  let all = 0;
  lines.forEach((line, index) => {
    for (const broken of slip(line)) {
      const findings = readingFindings(outlineOf(lines.with(index, broken).join("\n")));
      all++;
      if (findings.every(({ span }) => span.line === index || headingOf(lines, index) === span.line))
        contained++;
    }
  });
  return Math.floor((100 * contained) / all);
}

/** A block that lacks a line says so at its heading. */
function headingOf(lines: readonly string[], index: number): number {
  return lines.slice(0, index).findLastIndex((line) => /^[a-z]/.test(line));
}

describe("recovery", () => {
  test("the record itself has no findings", () => {
    expect(readingFindings(outlineOf(RECORD))).toEqual([]);
  });

  // Computed by this very test; a change of the reader may raise these numbers and must not lower them.
  test.each([
    ["a letter lost", 99],
    ["a letter doubled", 98],
    ["two letters swapped", 98],
    ["a stray quote", 82],
    ["a stray bracket", 81],
    ["a blank too many", 90],
    ["a line cut short", 85],
  ])("%s stays in its line in at least %i of 100 cases", (name, least) => {
    const slip = SLIPS[name] ?? (() => []);
    expect(scoreOf(slip)).toBeGreaterThanOrEqual(least);
  });

  test("a broken head keeps its rows, a broken heading its lines", () => {
    checkReading(`
      headnote 1
      prot p
      #<^^ warning[unknown-keyword]
        side intake
        valve 2.020 in
      rnu r "a
      #<^ warning[unknown-keyword]
      #     ^^ error[unclosed-text]
        lift[in depression [inH2O] flow[cfm
      #     ^^^ error[unclosed-bracket]
      #                                ^^^^ error[unclosed-bracket]
        0.1 28 58.4
    `);
  });
});
