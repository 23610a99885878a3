// An include that cannot be read.
import { rule } from "./rule.ts";
import { unreadNames } from "./unread-names.ts";

export const missingInclude = rule<{ path: string; problem: string; names: string }>({
  code: "missing-include",
  severity: "error",
  message: ({ path, problem, names }) => `"${path}" cannot be read: ${problem}${names}`,
  help: () => "give the path from this file's own folder, with /",
  what: "An included file does not exist or cannot be read.",
  why: "Benches, heads and ports that it would define are missing, and with them the results. Names that the file uses and nothing else defines may stand in it; they are told of here, and nowhere else.",
  bad: `headnote 1
include "shop.headnote"
`,
  good: `headnote 1
include "shop.headnote"
#- shop.headnote
headnote 1
`,
  check({ scope }, report) {
    for (const resolved of scope.includes) {
      const { include, problem, detail = "it is not there" } = resolved;
      if (problem !== "missing") continue;
      const { names, related } = unreadNames(scope, resolved);
      report(include.span, { path: include.path, problem: detail, names }, { related });
    }
  },
});
