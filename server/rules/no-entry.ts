// A run that does not say how the air enters or leaves the port.
import { INTAKE_SESSION } from "./examples.ts";
import { conditionsSpan, isWritten } from "./places.ts";
import { rule } from "./rule.ts";

export const noEntry = rule<{ side: string; example: string }>({
  code: "no-entry",
  severity: "hint",
  message: ({ side }) =>
    side === "exhaust"
      ? "the stub of this exhaust port is not stated"
      : "the entry of this intake port is not stated",
  help: ({ example }) => `state it in the session with a line such as: ${example}`,
  what: "An intake port is measured without saying what its entry was, or an exhaust port without saying what stub it had.",
  why: "A radius at the entry or a stub at the exit changes the flow, so results with and without are not comparable.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
port p1
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       0.342 in
session 2026-03-02
  bench      north
  port       p1
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  checkSetup(run, report, input) {
    const { port, entry, stub } = run.setup;
    const side = port?.side;
    if (side === "intake" && entry === undefined && !isWritten(input, run, "entry"))
      report(conditionsSpan(input, run), { side, example: "entry radiused" });
    if (side === "exhaust" && stub === undefined && !isWritten(input, run, "stub"))
      report(conditionsSpan(input, run), { side, example: "stub none" });
  },
});
