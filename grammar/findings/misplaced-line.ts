// A line that cannot stand where it stands.
import type { FindingKind } from "../../shared/finding.ts";

export const misplacedLine: FindingKind<{ what: string; where: string; takes: string }> = {
  code: "misplaced-line",
  severity: "error",
  message: ({ what, where }) => `${what} cannot stand ${where}`,
  help: ({ takes }) => (takes === "" ? "move it below the heading that it belongs to" : `move it; ${takes}`),
  what: "A line stands in a block that does not take it, or before any heading.",
  why: "A line says something of the block above it; in the wrong block it says nothing.",
  bad: `headnote 1
plate p1
  stroke 3.480 in
`,
  good: `headnote 1
engine e1
  stroke     3.480 in
`,
};
