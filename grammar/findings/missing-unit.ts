// A number without its unit.
import type { FindingKind } from "../../shared/finding.ts";

export const missingUnit: FindingKind<{ written: string; dimension: string; units: string }> = {
  code: "missing-unit",
  severity: "error",
  message: ({ written, dimension }) => `'${written}' has no unit; ${dimension} is needed`,
  help: ({ units }) => `write the unit behind it: ${units}`,
  what: "A value, or a column, that has a dimension stands without its unit.",
  why: "A unit that must be guessed is the most usual way in which a record goes wrong.",
  bad: `headnote 1
plate p1
  diameter   2.500
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
