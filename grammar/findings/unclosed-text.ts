// A text without its closing quote.
import type { FindingKind } from "../../shared/finding.ts";

export const unclosedText: FindingKind = {
  code: "unclosed-text",
  severity: "error",
  message: () => "this text has no closing quote",
  help: () => "close it with a double quote at its end",
  what: "A text in quotes is not closed on its line.",
  why: "A text never goes on over the end of its line, so that one slip cannot swallow the lines below it.",
  bad: `headnote 1
head a114 "iron head
`,
  good: `headnote 1
head a114 "iron head"
`,
};
