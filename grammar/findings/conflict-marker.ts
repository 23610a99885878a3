// What a version-control system left behind.
import type { FindingKind } from "../../shared/finding.ts";

export const conflictMarker: FindingKind = {
  code: "conflict-marker",
  severity: "error",
  message: () => "a merge left this conflict marker behind",
  help: () =>
    "keep the readings that are right and delete the marker lines; the file is not formatted before that",
  what: "A line begins with a conflict marker of a merge.",
  why: "Two versions of the same readings stand in the file, and only a person can say which one is right.",
  bad: `headnote 1
<<<<<<< mine
head a114
`,
  good: `headnote 1
head a114
`,
};
