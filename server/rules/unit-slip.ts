// A number that stands in another unit, or has its point in another place, than its neighbours.

import { findMeter } from "../../shared/calc/meters/index.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { figures, inUnit } from "./words.ts";

/** What a factor most likely is. */
const MEANINGS: readonly (readonly [factor: number, meaning: string])[] = [
  [25.4, "inches and millimetres"],
  [2.1189, "L/s and cfm"],
  [1.699, "cfm and m3/h"],
  [10, "a slipped decimal point"],
  [100, "a slipped decimal point"],
  [1000, "a slipped decimal point"],
];

export const unitSlip = rule<{ column: string; factor: string; expected: string; meaning: string }>({
  code: "unit-slip",
  severity: "warning",
  message: ({ column, factor, expected, meaning }) =>
    `this ${column} is ${factor} times the ${expected} that the points around it lead to: ${meaning}`,
  help: () => "look at the reading again; until then the row is left out of all means",
  what: "A flow or a lift is near a factor of 25.4, 2.1189, 1.699, 10, 100 or 1000 from what its neighbours lead to.",
  why: "That is what a wrong unit or a slipped decimal point looks like, and nothing that air does.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0       48.4
     0.300               28.0      150.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.5
     0.300               28.0      150.0
`,
  checkOdd(result, report) {
    if (result.slips.size === 0) return;
    for (const { row, slip } of result.rows) {
      if (slip === undefined) continue;
      const units = displayUnits(result.setup);
      const kind = result.setup.bench?.shows?.kind;
      const display = (kind && findMeter(kind)?.column) ?? "flow";
      const known = MEANINGS.find(([factor]) => factor === slip.near || 1 / factor === slip.near);
      report(cellSpan(result.setup.run, row, slip.column === "lift" ? "lift" : display), {
        column: slip.column,
        factor: figures(slip.factor),
        expected: inUnit(slip.expected, slip.column === "lift" ? units.lift : units.flow),
        meaning: known?.[1] ?? "a slip",
      });
    }
  },
});
