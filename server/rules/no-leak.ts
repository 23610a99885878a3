// A run whose leak nobody spoke of.
import { conditionsSpan, isWritten } from "./places.ts";
import { rule } from "./rule.ts";

export const noLeak = rule({
  code: "no-leak",
  severity: "warning",
  message: () => "no leak is stated; none is taken off",
  help: () =>
    "shut the valve, read the leak at the target and write: leak 1.8 cfm at 28 inH2O, or: leak none",
  what: "Neither the run nor its session says how much the set-up leaks, or that it does not.",
  why: "Valves, plug hole and gaskets leak; at low lift that is a visible part of the reading.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  good: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       1.2 cfm at 28 inH2O
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    if (run.setup.leak !== undefined || isWritten(input, run, "leak")) return;
    report(conditionsSpan(input, run), {});
  },
});
