// Fewer values than a keyword needs.
import type { FindingKind } from "../../shared/finding.ts";

export const missingValue: FindingKind<{ keyword: string; missing: string; form: string }> = {
  code: "missing-value",
  severity: "error",
  message: ({ keyword, missing }) => `'${keyword}' needs ${missing}`,
  help: ({ form }) => `the line reads: ${form}`,
  what: "A line ends before its keyword has all the values that it needs.",
  why: "A line that is not finished cannot be used.",
  bad: `headnote 1
plate p1
  diameter
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
