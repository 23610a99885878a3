// More cells than columns.
import type { FindingKind } from "../../shared/finding.ts";

export const extraCell: FindingKind<{ cells: number; columns: number }> = {
  code: "extra-cell",
  severity: "error",
  message: ({ cells, columns }) => `the row has ${cells} cells for ${columns} columns`,
  help: () =>
    "take out what is too much, or add its column to the head of the table; a remark stands in quotes",
  what: "A row has more cells than its table has columns.",
  why: "It cannot be told which reading is the one too many.",
  bad: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
        2.0       80.0  120.0
`,
  good: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
        2.0       80.0
`,
};
