// One line, one node, whatever stands in it.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseLine } from "../../grammar/line-parser.ts";
import type { Line } from "../../grammar/tree.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import { anyUnits, brokenText } from "../kit/arbitraries.ts";

/** A node in one line: its kind, its words in their order, texts in quotes, ⚠ for each finding. */
function render(line: Line): string {
  const broken = "⚠".repeat(line.findings.length);
  return `${line.kind}(${wordsOf(line).join(" ")})${broken}`;
}

function wordsOf(line: Line): string[] {
  switch (line.kind) {
    case "directive":
      return [line.keyword, ...line.atoms].map(({ kind, text }) => (kind === "text" ? `"${text}"` : text));
    case "columns":
      return line.heads.map(({ name, unit }) =>
        unit === undefined ? name.text : `${name.text}[${unit.text}]`,
      );
    case "row": {
      const remark = line.remark === undefined ? [] : [`"${line.remark}"`];
      const struck = line.void === undefined ? [] : [`void "${line.void}"`];
      return [...cellsOf(line).map(({ text }) => text), ...remark, ...struck];
    }
    default:
      return [];
  }
}

describe("a line is read as", () => {
  test.each([
    ["", "blank()"],
    ["  # only a comment", "blank()"],
    ["  valve  2.020 in # intake", "directive(valve 2.020 in)"],
    ['valve 2.020"', 'directive(valve 2.020 ")'],
    ['note "a \\"b\\" \\\\"', 'directive(note "a "b" \\")'],
    ["lift[in]depression [ inH2O ]  range", "columns(lift[in] depression[inH2O] range)"],
    ['lift["]  depression["H2O]', 'columns(lift["] depression["H2O])'],
    ["lift depression", "columns(lift depression)"],
    ["lift 0.400 in", "directive(lift 0.400 in)"],
    ['0.300 28.0 - "heard it tear" void "belt"', 'row(0.300 28.0 - "heard it tear" void "belt")'],
    ['0.300 28.0 void "belt" "heard it tear"', 'row(0.300 28.0 "heard it tear" void "belt")'],
    ["- 28.0 void", 'row(- 28.0 void "")'],
    ['0.300" 28.0', 'row(0.300" 28.0)'],
    ["– 28.0", "row(– 28.0)"],
    ["<<<<<<< mine", "conflict()⚠"],
    ["=======", "conflict()⚠"],
    ["======= x", "conflict()⚠"],
    ["========", "directive(========)"],
  ])("%s", (text, expected) => expect(render(parseLine(text))).toBe(expected));

  test.each([
    ['note "open', 'directive(note "open")⚠'],
    ["valve 2.020 [in]", "directive(valve 2.020 in)⚠⚠"],
    ["valve 2.020[in]", "directive(valve 2.020 in)⚠⚠"],
    ["stage [as cast]", "directive(stage as cast)⚠⚠"],
    ["lift[in depression[inH2O] flow[cfm]", "columns(lift[in] depression[inH2O] flow[cfm])⚠"],
    ["lift[in] depression[inH2O", "columns(lift[in] depression[inH2O])⚠"],
    ["lift[in]] depression[inH2O]", "columns(lift[in] depression[inH2O])⚠"],
    ["lift[[in] flow[cfm]", "columns(lift[] in flow[cfm])⚠⚠⚠"],
    ['lift["a"] flow[cfm]', "columns(lift[] flow[cfm])⚠"],
    ["\0valve 2.020 in", "directive(valve 2.020 in)⚠"],
    ['"as cast" stage', "directive(stage)⚠"],
    ["[", "blank()⚠"],
    ['"a" ] "b"', "blank()⚠⚠⚠"],
    ["] 0.300 28.0", "row(0.300 28.0)⚠"],
    ['0.300 "a" "b" 28.0', 'row(0.300 "a")⚠⚠'],
    ['0.300 void "a" void "b"', 'row(0.300 void "a")⚠⚠'],
    ["0.300 void 28.0", 'row(0.300 void "")⚠'],
  ])("%s, with what has no place in it reported", (text, expected) =>
    expect(render(parseLine(text))).toBe(expected),
  );

  test("x-shop [1 ] \"open as the user's own, with nothing to say about it", () => {
    expect(parseLine('x-shop [1 ] "open')).toMatchObject({ kind: "directive", findings: [] });
  });
});

describe("any line at all", () => {
  const line = fc.oneof(anyUnits(60), brokenText).map((text) => text.replace(/[\r\n]/g, " "));

  test("has one node, whose stretches lie inside it, in order and apart", () => {
    fc.assert(
      fc.property(line, (text) => {
        const node = parseLine(text);
        expect(node.text).toBe(text);
        let last = 0;
        for (const { from, to } of stretches(node)) {
          expect(from).toBeGreaterThanOrEqual(last);
          expect(to).toBeGreaterThanOrEqual(from);
          last = to;
        }
        expect(last).toBeLessThanOrEqual(text.length);
        for (const { span } of node.findings) {
          expect([span.line, span.from <= span.to, span.to <= text.length]).toEqual([0, true, true]);
        }
      }),
      { numRuns: 500 },
    );
  });
});

function stretches(line: Line): { from: number; to: number }[] {
  switch (line.kind) {
    case "directive":
      return [line.keyword, ...line.atoms];
    case "columns":
      return line.heads.flatMap(({ name, unit }) => (unit === undefined ? [name] : [name, unit]));
    case "row":
      return [...cellsOf(line)];
    default:
      return [];
  }
}
