// Characters that have no place where they stand.
import type { FindingKind } from "../../shared/finding.ts";

export const unreadText: FindingKind<{ text: string }> = {
  code: "unread-text",
  severity: "error",
  message: ({ text }) => `'${text}' has no place here and is not read`,
  help: () => "take it out, or put it in quotes or behind a # if it is a remark",
  what: "Characters stand where the line has no place for them: a bracket outside a head, a word behind a remark, a control character.",
  why: "What is not read is not used, and it should not look as if it were.",
  bad: `headnote 1
plate p1
  diameter 2.500 in ]
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
