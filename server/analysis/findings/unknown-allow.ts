// An allow comment with a code that does not exist.
import type { FindingKind } from "../../../shared/finding.ts";

export const unknownAllow: FindingKind<{ written: string; nearest: string }> = {
  code: "unknown-allow",
  severity: "warning",
  message: ({ written }) => `there is no finding '${written}' to allow`,
  help: ({ written, nearest }) => {
    if (written.includes(",")) return "a comment silences one finding: write a comment for each";
    return nearest === "" ? "see REFERENCE.md for the codes" : `did you mean ${nearest}?`;
  },
  what: "An allow comment names a code that no finding has.",
  why: "A misspelt code silences nothing, and it should not look as if it did.",
  bad: `headnote 1
# allow missing-lines: not measured
bench b
  shows      flow
`,
  good: `headnote 1
bench b
  shows      flow
`,
};
