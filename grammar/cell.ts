// Reads one cell of a row; what a cell means is up to its column, which the line itself does not know.
import type { IToken } from "chevrotain";
import { type Finding, raise } from "../shared/finding.ts";
import type { Cell } from "../shared/model/model.ts";
import { readNumber, splitNumberUnit } from "../shared/quantity/number.ts";
import { numberForm } from "./findings/number-form.ts";
import { numberFinding } from "./number-finding.ts";

/** A cell from its word. Misspelt numbers are reported here; a word that is no number at all may be a choice. */
export function readCell(token: IToken, reported: Finding[]): Cell {
  const text = token.image;
  const from = token.startOffset;
  const to = from + text.length;
  const read = readNumber(text);
  if ("value" in read) return { text, value: read.value, step: read.step, from, to };
  const span = { line: 0, from, to };
  const split = splitNumberUnit(text);
  if (split !== undefined) {
    const fix = {
      title: `Leave the unit to the column: ${split.number}`,
      edits: [{ span, text: split.number }],
    };
    reported.push(
      raise(numberForm, span, { written: text, problem: "unit-in-cell", mended: split.number }, { fix }),
    );
  } else if (read.problem !== "not-a-number") {
    reported.push(numberFinding(text, read, span));
  }
  return { text, value: Number.NaN, step: 0, from, to };
}

/** Whether the cell says that nothing was read. */
export function isUnread(cell: Cell): boolean {
  return cell.text === "-";
}
