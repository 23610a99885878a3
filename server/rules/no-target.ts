// A run without a target depression.

import { BARE_SESSION } from "./examples.ts";
import { conditionsSpan, isWritten } from "./places.ts";
import { rule } from "./rule.ts";
import { written } from "./words.ts";

export const noTarget = rule<{ target: string }>({
  code: "no-target",
  severity: "hint",
  message: ({ target }) => `no target depression is stated; ${target} is taken`,
  help: () => "state it in the session with a line such as: target 28 inH2O",
  what: "Neither the run nor its session states the depression that was to be held.",
  why: "Points are judged against the target, and results are quoted at it.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    const { target } = run.setup;
    if (target.source !== "default" || isWritten(input, run, "target")) return;
    report(conditionsSpan(input, run), { target: written(target.value) });
  },
});
