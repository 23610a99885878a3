import { describe, expect, test } from "vitest";
import type { SourceFile } from "../../server/analysis/source-file.ts";
import { folding } from "../../server/service/folding.ts";
import { formatEdits } from "../../server/service/format-edits.ts";
import { selection } from "../../server/service/selection.ts";
import { semanticTokens } from "../../server/service/semantic-tokens.ts";
import { matching, symbols } from "../../server/service/symbols.ts";
import { open, shopRecord } from "../kit/service.ts";

const RECORD = shopRecord('     0.100  28.0  55.0\n     0.200  28.0  99.0  void "slipped"\n\n# one\n# two\n');

const found = (files: readonly SourceFile[], query: string) =>
  matching(files, query).map(({ symbol }) => symbol.name);

test("what is called as a query asks stands before what has it in its name, and that before what speaks of it", () => {
  const texts = ['run on-north "before"\nport p "for the north"\n', "bench north-east\nbench north\n"];
  const files = texts.map((text) => open(`headnote 1\n${text}`).analysis.scope.file);
  expect(found(files, "North")).toEqual(["north", "north-east", "on-north", "p"]);
  expect(found(files, "bench north")).toEqual(["north", "north-east"]);
});

describe("the structure of a file", () => {
  test("is its blocks, with what a reader looks for", () => {
    const { analysis } = open(RECORD);
    expect(symbols(analysis.scope.file).map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
      "north: quick bench",
      "intake: as it came",
      "session 2026-03-02: ",
      "i1: 2 points",
    ]);
    expect(found([analysis.scope.file], "RUN i1")).toEqual(["i1"]);
  });

  test("folds by block and by comment", () => {
    const { analysis } = open(RECORD);
    const folds = folding(analysis.scope.file).map(({ first, last, kind }) => [first, last, kind]);
    expect(folds[0]).toEqual([2, 5, "block"]);
    expect(folds.at(-1)).toEqual([27, 28, "comment"]);
  });

  test("folds includes that stand together, and not one alone", () => {
    const folds = (text: string) =>
      folding(open(text).analysis.scope.file).map(({ first, last }) => [first, last]);
    expect(folds('headnote 1\ninclude "a.headnote"\ninclude "b.headnote"\n')).toEqual([[1, 2]]);
    expect(folds('headnote 1\ninclude "a.headnote"\n\ninclude "b.headnote"\n')).toEqual([]);
  });

  test("widens a selection by a value's number and unit, and by a table", () => {
    const shown = (marked: string) => {
      const { analysis, position, text } = open(marked);
      const lines = text.split("\n");
      return selection(analysis.scope.file, position).map(({ start, end }) =>
        start.line === end.line
          ? lines[start.line]?.slice(start.column, end.column)
          : `${start.line}-${end.line}`,
      );
    };
    expect(shown(RECORD.replace("45 deg width", "4$05 deg width"))).toEqual([
      "45",
      "45 deg",
      "seat       45 deg width 0.060 in",
      "7-13",
      "0-29",
    ]);
    expect(shown(RECORD.replace("depression[inH2O]", "depression[in$0H2O]"))).toEqual([
      "inH2O",
      "depression[inH2O]",
      "lift[in]  depression[inH2O]  flow[cfm]",
      "23-25",
      "22-29",
      "0-29",
    ]);
    expect(shown(RECORD.replace("99.0", "99$0.0"))).toEqual([
      "99.0",
      '0.200  28.0  99.0  void "slipped"',
      "23-25",
      "22-29",
      "0-29",
    ]);
  });

  test("widens a selection from word to line to block to file", () => {
    const { analysis, position } = open(RECORD.replace("quick", "qu$0ick"));
    const stretches = selection(analysis.scope.file, position).map(({ start, end }) => [
      start.line,
      start.column,
      end.line,
      end.column,
    ]);
    expect(stretches).toEqual([
      [2, 12, 2, 25],
      [2, 0, 2, 25],
      [2, 0, 6, 0],
      [0, 0, RECORD.split("\n").length - 1, 0],
    ]);
  });

  test("is coloured by meaning, void rows faintly", () => {
    const { analysis } = open(RECORD);
    const { lines } = analysis.scope.file.outline;
    const shown = (line: number) =>
      semanticTokens(analysis.scope.file, line, line)
        .flat()
        .map(
          ({ from, to, type, modifier }) =>
            `${lines[line]?.text.slice(from, to)}:${type}${modifier === undefined ? "" : `.${modifier}`}`,
        );
    expect(shown(2)).toEqual(["bench:keyword", "north:class.declaration", '"quick bench":string']);
    expect(shown(10)).toEqual([
      "seat:keyword",
      "45:number",
      "deg:type",
      "width:property",
      "0.060:number",
      "in:type",
    ]);
    expect(shown(23)).toEqual([
      "lift:property",
      "in:type",
      "depression:property",
      "inH2O:type",
      "flow:property",
      "cfm:type",
    ]);
    expect(shown(25)).toEqual([
      "0.200:number.deprecated",
      "28.0:number.deprecated",
      "99.0:number.deprecated",
      "void:keyword",
      '"slipped":string',
    ]);
  });

  test("is formatted line by line: only lines that change are edited", () => {
    const { analysis } = open(RECORD);
    expect(formatEdits(analysis.scope.file).map(({ span, text }) => [span.line, text])).toEqual([
      [24, "     0.100               28.0       55.0"],
      [25, '     0.200               28.0       99.0  void "slipped"'],
    ]);
    expect(formatEdits(analysis.scope.file, 25, 25)).toHaveLength(1);
  });
});
