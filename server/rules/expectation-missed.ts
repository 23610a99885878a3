// A run that does not reach what it was to reach.

import { flowAt } from "../../shared/calc/summary.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";
import { inUnit, percent, written } from "./words.ts";

export const expectationMissed = rule<{
  expected: string;
  lift: string;
  got: string;
  off: string;
  within: string;
}>({
  code: "expectation-missed",
  severity: "error",
  message: ({ expected, lift, got, off, within }) =>
    got === ""
      ? `${expected} is expected at ${lift}, where the run has no reading`
      : `${expected} is expected at ${lift} within ${within}; it is ${got}, ${off} off`,
  help: ({ got }) =>
    got === "" ? "read the run up to this lift" : "read this lift again, or change what is expected",
  what: "Corrected flow at a lift is further from what the run's expect line says than that line allows.",
  why: "What was agreed or measured before should be noticed when it no longer holds.",
  bad: `${INTAKE_SESSION}run r1
  expect     flow 112 cfm at 0.200 in within 1 %
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
`,
  good: `${INTAKE_SESSION}run r1
  expect     flow 112 cfm at 0.200 in within 1 %
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      112.2
`,
  checkRun(result, report) {
    for (const { flow, lift, within, span } of result.setup.run.expectations) {
      const got = flowAt(result.rising, lift.value);
      const args = { expected: written(flow), lift: written(lift), within: percent(within.value) };
      if (got === undefined) {
        report(span, { ...args, got: "", off: "" });
        continue;
      }
      const off = got / flow.value - 1;
      if (Math.abs(off) <= within.value * (1 + 1e-9)) continue;
      report(span, { ...args, got: inUnit(got, flow.unit), off: percent(off) });
    }
  },
});
