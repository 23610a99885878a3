// A Cd that ports do not have.

import { areasOf } from "../../shared/calc/port-areas.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";

/** Above this L/D the curtain is no longer the restriction, and its Cd says little. */
const HIGHEST_LIFT_RATIO = 0.3;

export const implausibleCd = rule<{ cd: string; low: string; high: string; ratio: string }>({
  code: "implausible-cd",
  severity: "hint",
  message: ({ cd, low, high, ratio }) =>
    `Cd on the curtain is ${cd} at L/D ${ratio}; ports have ${low} to ${high} here`,
  help: () => "look at the lift, the valve's diameter and the flow of this row",
  what: "Below L/D 0.3 the discharge coefficient on the curtain area is outside what ports have.",
  why: "It is not impossible, but a slip in lift, diameter or flow is likelier.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       15.0
     0.200               28.0      108.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
`,
  checkRun(result, report, limits) {
    const { port } = result.setup;
    const diameter = port?.valve?.value;
    if (port === undefined || diameter === undefined) return;
    const areas = areasOf(port);
    const { numbers, usable, written } = result;
    for (const at of usable) {
      const lift = numbers.lift[at] ?? Number.NaN;
      if (lift / diameter >= HIGHEST_LIFT_RATIO) continue;
      const cd = (numbers.effectiveArea[at] ?? Number.NaN) / (areas.curtain(lift) ?? Number.NaN);
      const row = written[at];
      // No number where there is no area.
      if (row === undefined || !(cd < limits.cdLowest || cd > limits.cdHighest)) continue;
      report(rowSpan(row), {
        cd: formatFixed(cd, 3),
        low: formatFixed(limits.cdLowest, 2),
        high: formatFixed(limits.cdHighest, 2),
        ratio: formatFixed(lift / diameter, 3),
      });
    }
  },
});
