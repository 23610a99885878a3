// A column that the table cannot have.
import type { FindingKind } from "../../shared/finding.ts";

export const unknownColumn: FindingKind<{ written: string; block: string; nearest: string; known: string }> =
  {
    code: "unknown-column",
    severity: "warning",
    message: ({ written, block }) => `a ${block} has no column '${written}'; its cells are kept but not used`,
    help: ({ nearest, known }) => (nearest === "" ? `known columns: ${known}` : `did you mean ${nearest}?`),
    what: "A column's name is not one that its table knows, or stands twice.",
    why: "Readings under a misspelt name would silently take no part in anything.",
    bad: "headnote 1\nbench b\n  shows signal\n  signal[V] flow[cfm] remark[s]\n  1.0 40.0 2.0\n",
    good: "headnote 1\nbench b\n  shows signal\n  signal[V] flow[cfm]\n  1.0 40.0\n",
  };
