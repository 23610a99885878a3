// Reports a misspelt number with every spelling that it may have meant.
import { type Finding, raise } from "../shared/finding.ts";
import type { NumberFault } from "../shared/quantity/number.ts";
import type { Span } from "../shared/text/span.ts";
import { decimalComma } from "./findings/decimal-comma.ts";
import { numberForm } from "./findings/number-form.ts";

/** The finding for a word that is not a number of the format; its fix takes the likeliest meant spelling. */
export function numberFinding(written: string, fault: NumberFault, span: Span): Finding {
  const [likeliest] = fault.mended;
  const fix =
    likeliest === undefined ? undefined : { title: `Write ${likeliest}`, edits: [{ span, text: likeliest }] };
  const mended = fault.mended.join(" or ");
  return fault.problem === "decimal-comma"
    ? raise(decimalComma, span, { written, mended }, { fix })
    : raise(numberForm, span, { written, problem: fault.problem, mended }, { fix });
}
