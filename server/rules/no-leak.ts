// A run whose leak nobody spoke of.
import { conditionsSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noLeak = rule({
  code: "no-leak",
  severity: "warning",
  message: () => "no leak is stated; none is taken off",
  help: () =>
    "shut the valve, read the leak at the target and write: leak 1.8 cfm at 28 inH2O, or: leak none",
  what: "Neither the run nor its session says how much the set-up leaks, or that it does not.",
  why: "Valves, plug hole and gaskets leak; at low lift that is a visible part of the reading.",
  bad: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench north\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 60.0\n",
  good: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench north\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak 1.2 cfm at 28 inH2O\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 60.0\n",
  check(input, report) {
    for (const run of input.settled) {
      if (run.setup.leak === undefined) report(conditionsSpan(input, run), {});
    }
  },
});
