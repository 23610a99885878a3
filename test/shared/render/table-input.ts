// Makes the input of every kind of table from the text of a record.
import type { RowResult } from "../../../shared/model/result.ts";
import type { TableInput } from "../../../shared/render/table-input.ts";
import { evaluateText } from "../../kit/evaluate.ts";

/** The runs of a text as a table takes them; `codes` gives the findings of a row. */
export function tableInput(
  text: string,
  codes: (row: RowResult) => readonly string[] = () => [],
): TableInput {
  const { plates, ...evaluated } = evaluateText(text);
  return {
    file: "a.headnote",
    ...evaluated,
    plates: plates.map((result) => ({ result, startLine: 0, findings: [] })),
    findingsOf: (_, row) => codes(row),
  };
}

/** Texts that would steer a terminal, a spreadsheet, Markdown or a page if they were not kept from it. */
export const HOSTILE: readonly string[] = [
  "\u001b]0;owned\u0007",
  "\u009b31m",
  "\u202egnp.exe",
  "=cmd|' /C calc'!A0",
  "+1+1",
  "-2+3",
  "@SUM(A1)",
  "  =1",
  "＝1+1",
  "a;=1",
  "a | b",
  "`code` <b>*x*</b> [a](b)",
  "__proto__",
];
