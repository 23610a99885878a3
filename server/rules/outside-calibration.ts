// A signal that the bench's calibration table does not reach.
import { columnValues } from "../../shared/calc/column-values.ts";
import { calibrationPoints } from "../../shared/calc/meters/signal.ts";
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit } from "./words.ts";

export const outsideCalibration = rule<{ signal: string; low: string; high: string }>({
  code: "outside-calibration",
  severity: "error",
  message: ({ signal, low, high }) =>
    `${signal} is outside the calibration table (${low} to ${high}), so this row gives no result`,
  help: () => "calibrate the meter up to here; beyond its table nothing is known",
  what: "A signal is smaller or larger than those in the bench's calibration table, or of another kind.",
  why: "A calibration says nothing outside its points, and going on in a straight line would be a guess.",
  bad: `headnote 1
bench north
  shows      signal
  repeat     0.4 %
  signal[V]  flow[cfm]
        1.0       50.0
        2.0      100.0
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  signal[V]
     0.100               28.0        2.4
`,
  good: `headnote 1
bench north
  shows      signal
  repeat     0.4 %
  signal[V]  flow[cfm]
        1.0       50.0
        2.0      100.0
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  signal[V]
     0.100               28.0        1.4
`,
  display: "signal",
  checkRun(result, report) {
    const { bench } = result.setup;
    if (bench === undefined) return;
    const { table } = result.setup.run;
    const signals = columnValues(table, "signal");
    const unit = table?.columns.find((column) => column.name === "signal")?.unit;
    if (signals === undefined || unit === undefined) return;
    const points = calibrationPoints(bench.table);
    const first = points[0];
    const last = points.at(-1);
    if (first === undefined || last === undefined) return;
    for (const { row } of result.rows) {
      const signal = signals.value(row);
      if (signal === undefined || row.void !== undefined) continue;
      if (signal >= first.signal && signal <= last.signal) continue;
      report(cellSpan(result.setup.run, row, "signal"), {
        signal: inUnit(signal, unit),
        low: inUnit(first.signal, unit),
        high: inUnit(last.signal, unit),
      });
    }
  },
});
