// Files that include each other.
import { rule } from "./rule.ts";

export const includeCycle = rule<{ way: string }>({
  code: "include-cycle",
  severity: "error",
  message: ({ way }) => `this include leads back to this file: ${way}`,
  help: () => "put what both files need into a third one that includes neither",
  what: "A file includes itself, directly or by way of others.",
  why: "Of two files that include each other neither can be read first.",
  bad: `headnote 1
include "b.headnote"
#- b.headnote
headnote 1
include "main.headnote"
`,
  good: `headnote 1
include "b.headnote"
#- b.headnote
headnote 1
`,
  check({ scope }, report) {
    for (const { include, problem, detail } of scope.includes) {
      if (problem === "cycle") report(include.span, { way: detail ?? include.path });
    }
  },
});
