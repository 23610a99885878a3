// A table without a head, or without a column that it needs.
import type { FindingKind } from "../../shared/finding.ts";

export const missingColumns: FindingKind<{ block: string; missing: string; example: string }> = {
  code: "missing-columns",
  severity: "error",
  message: ({ block, missing }) => `this ${block} has no ${missing}`,
  help: ({ example }) => `name the columns and their units above the rows, such as ${example}`,
  what: "Rows stand without a line that names their columns, or a column is missing that the block cannot do without.",
  why: "Without its column and unit a number says nothing.",
  bad: "headnote 1\nbench b\n  shows signal\n  1.0 40.0\n",
  good: "headnote 1\nbench b\n  shows signal\n  signal[V] flow[cfm]\n  1.0 40.0\n",
};
