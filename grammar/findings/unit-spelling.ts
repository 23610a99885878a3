// A unit that is understood but not spelt as the format spells it.
import type { FindingKind } from "../../shared/finding.ts";

export const unitSpelling: FindingKind<{ written: string; symbol: string }> = {
  code: "unit-spelling",
  severity: "hint",
  message: ({ written, symbol }) => `'${written}' is read as ${symbol}`,
  help: ({ symbol }) => `write ${symbol}, so that every record spells it alike`,
  what: "A unit is written in a usual but not in its canonical spelling.",
  why: "One spelling makes records searchable and their differences small.",
  bad: `headnote 1
plate p1
  diameter   2.500 inch
`,
  good: `headnote 1
plate p1
  diameter   2.500 in
`,
};
