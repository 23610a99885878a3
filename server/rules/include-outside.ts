// An include that leaves the workspace.
import { rule } from "./rule.ts";

export const includeOutside = rule<{ path: string }>({
  code: "include-outside",
  severity: "error",
  message: ({ path }) => `"${path}" lies outside the workspace`,
  help: () => "put a headnote.json into the folder that holds all records, or move the file below it",
  what: "An include leads out of the folder that holds the nearest headnote.json, else the repository, else the file.",
  why: "Records that reach outside their folder break when it is copied, and a record from elsewhere must not read what it likes.",
  bad: `headnote 1
include "../../shop.headnote"
`,
  good: `headnote 1
include "shop.headnote"
#- shop.headnote
headnote 1
`,
  check({ scope }, report) {
    for (const { include, problem } of scope.includes) {
      if (problem === "outside") report(include.span, { path: include.path });
    }
  },
});
