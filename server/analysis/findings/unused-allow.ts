// An allow comment that silences nothing.
import type { FindingKind } from "../../../shared/finding.ts";

export const unusedAllow: FindingKind<{ code: string }> = {
  code: "unused-allow",
  severity: "hint",
  message: ({ code }) => `there is no '${code}' here any more to allow`,
  help: () => "take the comment out",
  what: "An allow comment stands where its finding does not occur.",
  why: "Left behind, it would silence the same finding the next time, when nobody means it.",
  bad: `headnote 1
# allow missing-line: not measured
bench b
  shows      flow
`,
  good: `headnote 1
# allow missing-line: not measured
bench b
  settle     1.6 s
`,
};
