// A name with characters that a name cannot have.
import type { FindingKind } from "../../shared/finding.ts";

export const badName: FindingKind<{ written: string }> = {
  code: "bad-name",
  severity: "error",
  message: ({ written }) => `'${written}' cannot be a name`,
  help: () => "begin with a letter or digit and go on with letters, digits, '.', '_' or '-'",
  what: "A name has characters other than letters, digits, '.', '_' and '-', or begins with a mark, or stands in quotes.",
  why: "Names are used in commands and file names and must read the same everywhere.",
  bad: `headnote 1
head a114/2
`,
  good: `headnote 1
head a114-2
`,
};
