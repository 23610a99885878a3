// A block without a line that it needs.
import type { FindingKind } from "../../shared/finding.ts";

export const missingLine: FindingKind<{ block: string; keyword: string; example: string }> = {
  code: "missing-line",
  severity: "error",
  message: ({ block, keyword }) => `this ${block} has no '${keyword}' line`,
  help: ({ example }) => `add a line such as: ${example}`,
  what: "A block lacks a line that it cannot do without.",
  why: "A bench that does not say what it shows, or a port without its valve, leaves its readings without a meaning.",
  bad: `headnote 1
bench b
  settle     1.6 s
`,
  good: `headnote 1
bench b
  shows      flow
  settle     1.6 s
`,
};
