// A comma in a number.
import type { FindingKind } from "../../shared/finding.ts";

export const decimalComma: FindingKind<{ written: string; mended: string }> = {
  code: "decimal-comma",
  severity: "error",
  message: ({ written }) => `'${written}' has a comma; the decimal mark is a point`,
  help: ({ mended }) => (mended === "" ? "write the number with a point" : `write ${mended}`),
  what: "A number is written with a comma.",
  why: "A comma means a decimal in one country and thousands in another; guessing would be wrong by a factor of 1000.",
  bad: `headnote 1
plate p1
  diameter   2,500 in
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
