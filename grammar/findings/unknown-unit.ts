// A unit that is not in the table of units.
import type { FindingKind } from "../../shared/finding.ts";

export const unknownUnit: FindingKind<{ written: string; nearest: string; units: string }> = {
  code: "unknown-unit",
  severity: "error",
  message: ({ written }) => `'${written}' is not a unit`,
  help: ({ nearest, units }) => (nearest === "" ? `units that fit: ${units}` : `did you mean ${nearest}?`),
  what: "A unit is not in the format's table of units.",
  why: "The table is closed, so that a slip is an error and never a unit of its own.",
  bad: `headnote 1
plate p1
  diameter   2.500 imch
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
