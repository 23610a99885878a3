// A share of a range that is too small or too large to be read well.
import { columnValues } from "../../shared/calc/column-values.ts";
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { percent } from "./words.ts";

/** Of the range's flow, both inclusive (common practice, no published source). */
const LOWEST = 0.2;
const HIGHEST = 1;
const ROUNDING = 1e-9;

export const outsideRange = rule<{ share: string; low: string; high: string }>({
  code: "outside-range",
  severity: "warning",
  message: ({ share, low, high }) => `${share} of the range is outside ${low} to ${high}`,
  help: () => "read this point on another range",
  what: "A bench that shows percent was read below a fifth of its range, or above its full scale.",
  why: "Near its bottom a range is coarse and its zero matters; above its top the display is not calibrated.",
  bad: `headnote 1
bench north
  shows      percent
  repeat     0.4 %
  range      low 150 cfm at 28 inH2O
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  reading[%]
     0.100               28.0        12.0
`,
  good: `headnote 1
bench north
  shows      percent
  repeat     0.4 %
  range      low 150 cfm at 28 inH2O
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  reading[%]
     0.100               28.0        42.0
`,
  display: "percent",
  checkRun(result, report) {
    const readings = columnValues(result.setup.run.table, "reading");
    if (readings === undefined) return;
    for (const { row } of result.rows) {
      const share = readings.value(row);
      if (share === undefined || row.void !== undefined) continue;
      if (share >= LOWEST - ROUNDING && share <= HIGHEST + ROUNDING) continue;
      const args = { share: percent(share), low: percent(LOWEST), high: percent(HIGHEST) };
      report(cellSpan(result.setup.run, row, "reading"), args);
    }
  },
});
