// A unit's bracket without its other half.
import type { FindingKind } from "../../shared/finding.ts";

export const unclosedBracket: FindingKind<{ unit: string }> = {
  code: "unclosed-bracket",
  severity: "error",
  message: ({ unit }) => `the bracket before '${unit}' is not closed`,
  help: () => "close it behind the unit, as in lift[in]",
  what: "The bracket around a column's unit is not closed.",
  why: "Each column's unit stands in its own pair of brackets, so that none is taken for its neighbour's.",
  bad: `headnote 1
bench b
  shows      signal
  signal[V flow[cfm]
  1.0 40.0
`,
  good: `headnote 1
bench b
  shows      signal
  signal[V]  flow[cfm]
        1.0       40.0
`,
};
