// A reading that was not taken at its range's own depression.
import { columnWords } from "../../shared/calc/column-values.ts";
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit, written } from "./words.ts";

export const offRange = rule<{ depression: string; range: string; at: string; within: string }>({
  code: "off-range",
  severity: "warning",
  message: ({ depression, range, at, within }) =>
    `read at ${depression}, but the flow of range '${range}' is true at ${at} (band ${within})`,
  help: () => "hold the range's own depression: its percent are not scaled by depression",
  what: "A bench that shows percent was read at another depression than the one its range was calibrated at.",
  why: "The full-scale flow of a range holds at one depression only.",
  bad: `headnote 1
bench north
  shows      percent
  repeat     0.4 %
  range      low 150 cfm at 25 inH2O
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  reading[%]
     0.100               28.0        42.0
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
    const { bench, within } = result.setup;
    if (bench === undefined) return;
    const rangeOf = columnWords(result.setup.run.table, "range");
    for (const { row, depression } of result.rows) {
      const name = rangeOf?.(row) ?? (bench.ranges.length === 1 ? bench.ranges[0]?.name : undefined);
      const range = bench.ranges.find((entry) => entry.name === name);
      if (range === undefined || depression === undefined || row.void !== undefined) continue;
      const off = Math.abs(depression - range.depression.value);
      if (off <= within.value * (1 + 1e-9)) continue;
      const { unit } = range.depression;
      report(cellSpan(result.setup.run, row, "depression"), {
        depression: inUnit(depression, unit),
        range: range.name,
        at: written(range.depression),
        within: inUnit(within.value, unit),
      });
    }
  },
});
