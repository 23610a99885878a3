// An include that cannot be read.
import { rule } from "./rule.ts";

export const missingInclude = rule<{ path: string; problem: string }>({
  code: "missing-include",
  severity: "error",
  message: ({ path, problem }) => `"${path}" cannot be read: ${problem}`,
  help: () => "give the path from this file's own folder, with /",
  what: "An included file does not exist or cannot be read.",
  why: "Benches, heads and ports that it would define are missing, and with them the results.",
  bad: `headnote 1
include "shop.headnote"
`,
  good: `headnote 1
include "shop.headnote"
#- shop.headnote
headnote 1
`,
  check({ scope }, report) {
    for (const { include, problem, detail } of scope.includes) {
      if (problem === "missing")
        report(include.span, { path: include.path, problem: detail ?? "it is not there" });
    }
  },
});
