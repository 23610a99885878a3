// A number in a form that the format does not take.
import type { FindingKind } from "../../shared/finding.ts";

const problems: Readonly<Record<string, string>> = {
  "trailing-point": "ends in a point",
  "plus-sign": "has a plus sign",
  exponent: "has an exponent",
  "foreign-digits": "has digits other than 0 to 9",
  "foreign-minus": "has a dash for its minus sign",
  "zero-denominator": "is divided by zero",
  "too-long": "has more digits than any reading",
  "not-a-number": "is not a number",
  "unit-in-cell": "carries a unit, which belongs to the column",
  "not-whole": "is not a whole number above zero",
};

/** `needed` says what else may stand in the place; "" where that is a number and nothing else. */
export const numberForm: FindingKind<{ written: string; problem: string; mended: string; needed?: string }> =
  {
    code: "number-form",
    severity: "error",
    message: ({ written, problem, needed = "" }) =>
      `'${written}' ${problems[problem] ?? "is not a number"}${needed === "" ? "" : `; ${needed} is needed`}`,
    help: ({ problem, mended }) => {
      if (mended !== "") return `write ${mended}`;
      return problem === "not-whole"
        ? "write a whole number, such as 8"
        : "write digits with a point, such as 28.0, or a fraction such as 11/32";
    },
    what: "A number is not written as digits with at most one point and a leading '-', or as a fraction.",
    why: "One way of writing numbers keeps every reader, and every spreadsheet after it, in agreement.",
    bad: `headnote 1
plate p1
  diameter   +2.500 in
`,
    good: `headnote 1
plate p1
  diameter   2.500 in
`,
  };
