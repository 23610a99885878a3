// A table without a head, or without a column that it needs.
import type { FindingKind } from "../../shared/finding.ts";

export const missingColumns: FindingKind<{ block: string; missing: string; example: string }> = {
  code: "missing-columns",
  severity: "error",
  message: ({ block, missing }) => `this ${block} has no ${missing}`,
  help: ({ example }) => `name the columns and their units above the rows, such as ${example}`,
  what: "Rows stand without a line that names their columns, or a column is missing that the block cannot do without.",
  why: "Without its column and unit a number says nothing.",
  bad: `headnote 1
bench b
  shows      signal
  1.0 40.0
`,
  good: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
`,
};
