// An include that leaves the workspace.
import { rule } from "./rule.ts";
import { unreadNames } from "./unread-names.ts";

export const includeOutside = rule<{ path: string; names: string }>({
  code: "include-outside",
  severity: "error",
  message: ({ path, names }) => `"${path}" lies outside the workspace${names}`,
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
    for (const resolved of scope.includes) {
      if (resolved.problem !== "outside") continue;
      const { names, related } = unreadNames(scope, resolved);
      report(resolved.include.span, { path: resolved.include.path, names }, { related });
    }
  },
});
