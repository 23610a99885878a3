// A line that may stand only once.
import type { FindingKind } from "../../shared/finding.ts";

export const repeatedLine: FindingKind<{ what: string; where: string }> = {
  code: "repeated-line",
  severity: "error",
  message: ({ what, where }) => `${what} already stands in this ${where}; the first one counts`,
  help: () => "keep the one that is right",
  what: "A line that may stand once in its block, or a session that may stand once in its file, stands again.",
  why: "Two values for one thing leave open which of them the results were made with.",
  bad: `headnote 1
plate p1
  diameter   2.500 in
  diameter   2.505 in
`,
  good: `headnote 1
plate p1
  diameter   2.505 in
`,
};
