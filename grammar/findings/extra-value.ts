// More values than a keyword takes.
import type { FindingKind } from "../../shared/finding.ts";

export const extraValue: FindingKind<{ keyword: string; written: string; form: string }> = {
  code: "extra-value",
  severity: "error",
  message: ({ keyword, written }) => `'${keyword}' does not take '${written}' here`,
  help: ({ form }) => `the line reads: ${form}`,
  what: "A line goes on behind the last value that its keyword takes, or names a value that it does not have.",
  why: "What is not understood is not used, and it should not look as if it were.",
  bad: `headnote 1
plate p1
  diameter   2.500 in 3.000 in
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
