// A unit of the wrong kind.
import type { FindingKind } from "../../shared/finding.ts";

export const wrongDimension: FindingKind<{ written: string; got: string; needed: string; units: string }> = {
  code: "wrong-dimension",
  severity: "error",
  message: ({ written, got, needed }) => `'${written}' is ${got}; ${needed} is needed`,
  help: ({ units }) => `units that fit: ${units}`,
  what: "A unit measures something else than what stands there.",
  why: "A length where a pressure belongs means that a value stands in the wrong place or has the wrong unit.",
  bad: `headnote 1
plate p1
  diameter   2.500 inH2O
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
