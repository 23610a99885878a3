// A leak that is a large part of a reading.
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { percent } from "./words.ts";

export const largeLeak = rule<{ share: string; limit: string }>({
  code: "large-leak",
  severity: "warning",
  message: ({ share, limit }) => `the leak is ${share} of this reading (limit ${limit})`,
  help: () =>
    "find the leak before you go on: valve seats, plug hole, gasket, adapter; a drop of oil at the seat tells",
  what: "The leak, scaled to the row's depression, is more than a few percent of the reading.",
  why: "What is taken off is known less well than the flow itself, and a leak seldom stays as it was measured.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       9.0 cfm at 28 inH2O
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
  checkRun(result, report, limits) {
    const { leak, measured } = result.numbers;
    const least = limits.leakHint * (1 + 1e-9);
    for (let at = 0; at < leak.length; at++) {
      const share = (leak[at] ?? 0) / (measured[at] ?? 0);
      if (!(share > least)) continue;
      const row = result.written[at];
      if (row === undefined || row.void !== undefined || !((measured[at] ?? 0) > 0)) continue;
      const severe = share > limits.leakWarning * (1 + 1e-9);
      const limit = percent(severe ? limits.leakWarning : limits.leakHint);
      report(rowSpan(row), { share: percent(share), limit }, { severity: severe ? "warning" : "hint" });
    }
  },
});
