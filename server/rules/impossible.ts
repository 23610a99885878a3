// A flow that the valve cannot pass.

import { displayUnits } from "../../shared/render/display-units.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit, percent } from "./words.ts";

export const impossible = rule<{ effective: string; area: string; geometric: string; uncertainty: string }>({
  code: "impossible",
  severity: "error",
  message: ({ effective, area, geometric, uncertainty }) =>
    `an effective area of ${effective} cannot be: the ${area} is ${geometric}, and the reading is good to ${uncertainty}`,
  help: () =>
    "look at the unit of flow, the valve's diameter, the lift and the depression; the row is left out of all means",
  what: "The effective area is larger than the least area that valve, seat and throat leave, by more than the uncertainty.",
  why: "No port passes more than an ideal one would, so something that was written down is wrong.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      168.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      112.0
`,
  checkOdd(result, report) {
    if (result.impossible.size === 0) return;
    for (const row of result.rows) {
      const { impossible: found } = row;
      if (found === undefined) continue;
      const { area } = displayUnits(result.setup);
      report(rowSpan(row.row), {
        effective: inUnit(found.effective, area),
        area: found.area,
        geometric: inUnit(found.geometric, area),
        uncertainty: percent(found.uncertainty),
      });
    }
  },
});
