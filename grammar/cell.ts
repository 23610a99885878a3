// Says what is wrong with it where its column asks for a number.
import { type Finding, raise } from "../shared/finding.ts";
import type { Cell } from "../shared/model/model.ts";
import { readNumber, splitNumberUnit } from "../shared/quantity/number.ts";
import type { Span } from "../shared/text/span.ts";
import { numberForm } from "./findings/number-form.ts";
import { numberFinding } from "./number-finding.ts";

const FOREIGN_DASH = /^[\u2010-\u2015\u2212]$/;

/** Why a cell is neither a number nor `-`; `undefined` where it is one of them. */
export function cellFinding(cell: Cell, span: Span): Finding | undefined {
  const written = cell.text;
  const read = readNumber(written);
  if ("value" in read || written === "-") return undefined;
  const split = splitNumberUnit(written);
  if (split !== undefined) {
    const edits = [{ span, text: split.number }];
    const fix = { title: `Leave the unit to the column: ${split.number}`, edits };
    return raise(numberForm, span, { written, problem: "unit-in-cell", mended: split.number }, { fix });
  }
  return FOREIGN_DASH.test(written)
    ? numberFinding(written, { problem: "foreign-minus", mended: ["-"] }, span)
    : numberFinding(written, read, span);
}
