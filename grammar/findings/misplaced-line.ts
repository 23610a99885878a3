// A line that cannot stand where it stands.
import type { FindingKind } from "../../shared/finding.ts";

export const misplacedLine: FindingKind<{ what: string; where: string; takes: string }> = {
  code: "misplaced-line",
  severity: "error",
  message: ({ what, where }) => `${what} cannot stand ${where}`,
  help: ({ takes }) => (takes === "" ? "move it below the heading that it belongs to" : `move it; ${takes}`),
  what: "A line stands in a block that does not take it, or before any heading.",
  why: "A line says something of the block above it; in the wrong block it says nothing.",
  bad: "headnote 1\nplate p1\n  stroke 3.480 in\n",
  good: "headnote 1\nengine e1\n  stroke 3.480 in\n",
};
