// The first line, which says which version of the format the file is in.
import type { FindingKind } from "../../shared/finding.ts";

export const version: FindingKind<{ problem: string; written: string }> = {
  code: "version",
  severity: "error",
  message: ({ problem, written }) =>
    problem === "newer"
      ? `this file is in version ${written} of the format, of which only version 1 is known here; it is read as far as it can be`
      : problem === "unreadable"
        ? `'${written}' is not a version of the format`
        : "the first line does not say which version of the format this is",
  help: ({ problem }) =>
    problem === "newer" ? "use a newer Headnote" : "begin the file with the line: headnote 1",
  what: "The first line that is neither blank nor a comment is not `headnote 1`.",
  why: "The version line keeps a record readable for as long as there are records.",
  bad: `head a114
`,
  good: `headnote 1
head a114
`,
};
