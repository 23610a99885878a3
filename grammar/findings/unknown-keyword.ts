// A first word that the format does not know.
import type { FindingKind } from "../../shared/finding.ts";

export const unknownKeyword: FindingKind<{ written: string; nearest: string }> = {
  code: "unknown-keyword",
  severity: "warning",
  message: ({ written, nearest }) =>
    nearest === ""
      ? `'${written}' is not a keyword; the line is kept but not used`
      : `'${written}' is not a keyword`,
  help: ({ nearest }) =>
    nearest === ""
      ? "a keyword of your own begins with x-, and a comment with #"
      : `did you mean ${nearest}?`,
  what: "A line begins with a word that is no keyword of the format.",
  why: "A misspelt keyword would silently say nothing. Lines of newer versions are kept as they are.",
  bad: `headnote 1
plate p1
  diametre 2.500 in
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
