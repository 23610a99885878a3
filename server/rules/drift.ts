// A run that ends where it began and does not read the same there.

import { widening } from "../../shared/calc/repeatability.ts";
import { returnRow } from "../../shared/calc/return-row.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { liftWords, percent } from "./words.ts";

/** Two-sided 95 % point of the difference of two readings, in units of their standard deviation. */
const TWO_READINGS = 1.96 * Math.SQRT2;

export const drift = rule<{ change: string; lift: string; limit: string }>({
  code: "drift",
  severity: "warning",
  message: ({ change, lift, limit }) =>
    `back at ${lift} the flow is ${change} off the first reading; chance alone gives ${limit}`,
  help: () => "something moved during the run: look at leak, lift stop and zero, and take the run again",
  what: "The last row of a run returns to the lift of the first and reads something else.",
  why: "What has moved by the end of a run has moved its other points too.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
     0.100               28.0       56.5
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
     0.100               28.0       55.2
`,
  checkRun(result, report) {
    const back = returnRow(result);
    if (back === undefined) return;
    const { repeatability, rows, usable } = result;
    const first = rows[usable[0] ?? 0];
    if (first?.flow === undefined || back.flow === undefined) return;
    const change = back.flow.corrected / first.flow.corrected - 1;
    const limit = TWO_READINGS * repeatability.deviation * widening(repeatability);
    if (!(Math.abs(change) > limit)) return;
    const related = [{ span: rowSpan(first.row), message: "the first reading" }];
    const args = {
      change: percent(change),
      lift: liftWords(result.setup.run, back),
      limit: percent(limit),
    };
    report(rowSpan(back.row), args, { related });
  },
});
