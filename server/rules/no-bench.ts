// A run without a bench.
import { BARE_SESSION } from "./examples.ts";
import { conditionsSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noBench = rule({
  code: "no-bench",
  severity: "warning",
  message: () => "no bench is stated, so these readings give no results",
  help: () => "name the bench in the session with a line such as: bench north",
  what: "Neither the run nor its session names a bench.",
  why: "What a display shows, how well it repeats and how quick it is are part of every reading.",
  bad: `headnote 1
session 2026-03-02
  target     28 inH2O
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
    const { entity } = run.placed;
    const named = entity.bench ?? input.scope.file.session?.entity.bench;
    if (named === undefined) report(conditionsSpan(input, run), {});
  },
});
