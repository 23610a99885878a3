// Fewer cells than columns.
import type { FindingKind } from "../../shared/finding.ts";

export const missingCell: FindingKind<{ cells: number; columns: number; missing: string }> = {
  code: "missing-cell",
  severity: "error",
  message: ({ cells, columns, missing }) => `the row has ${cells} of ${columns} cells; ${missing} missing`,
  help: () => "write '-' for what was not read",
  what: "A row has fewer cells than its table has columns.",
  why: "Without a mark for what was not read it cannot be told which reading is missing.",
  bad: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
        2.0
        3.0      120.0
`,
  good: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
        2.0          -
        3.0      120.0
`,
};
