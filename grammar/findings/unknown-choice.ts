// A word where only some words can stand.
import type { FindingKind } from "../../shared/finding.ts";

export const unknownChoice: FindingKind<{ written: string; choices: string; nearest: string }> = {
  code: "unknown-choice",
  severity: "error",
  message: ({ written, choices }) =>
    `'${written}' is ${choices.includes(", ") ? "none of" : "not"} ${choices}`,
  help: ({ nearest, choices }) =>
    nearest === ""
      ? `write ${choices.includes(", ") ? "one of " : ""}${choices}`
      : `did you mean ${nearest}?`,
  what: "A word stands where the format takes one of a few others.",
  why: "A word that is not known cannot be used.",
  bad: `headnote 1
cam c1
  side       inlet
`,
  good: `headnote 1
cam c1
  side       intake
`,
};
