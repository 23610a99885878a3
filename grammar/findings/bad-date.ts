// A date that is no date.
import type { FindingKind } from "../../shared/finding.ts";

export const badDate: FindingKind<{ written: string }> = {
  code: "bad-date",
  severity: "error",
  message: ({ written }) => `'${written}' is not a date`,
  help: () => "write 2026-11-20, or with a time and its offset 2026-11-20T09:30+01:00",
  what: "A date is not of the form YYYY-MM-DD, names a day that does not exist, or has a time without its offset.",
  why: "Runs are put in order by their dates, over years and time zones; a date that can be read two ways breaks that order.",
  bad: `headnote 1
plate p1
  due        2026-02-30
`,
  good: `headnote 1
plate p1
  due        2026-03-01
`,
};
