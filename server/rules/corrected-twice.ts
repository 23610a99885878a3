// A display that is said to scale its flow to a depression, but does not.
import { type ColumnValues, columnValues } from "../../shared/calc/column-values.ts";
import { valueAt } from "../../shared/calc/summary.ts";
import type { RowResult, RunResult } from "../../shared/model/result.ts";
import { rowSpan } from "./places.ts";
import { type Report, rule } from "./rule.ts";
import { inUnit, percent } from "./words.ts";

type Args = { bench: string; depression: string; change: string; expected: string };

export const correctedTwice = rule<Args>({
  code: "corrected-twice",
  severity: "warning",
  message: ({ bench, depression, change, expected }) =>
    `at ${depression} the reading is ${change} off the points around it, as an unscaled display would be (${expected}); bench '${bench}' is said to scale by itself`,
  help: () =>
    "read one lift at two depressions: if the display changes with the square root, take the 'at' off the bench's 'shows flow' line",
  what: "The bench is said to show flow already scaled to a depression, but rows off the target follow the square root of their depression.",
  why: "A reading that is scaled twice, or taken for scaled when it is not, is wrong by half the error of its depression.",
  bad: `headnote 1
bench north
  shows      flow at 28 inH2O
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
     0.200               22.4      107.3  # allow off-target: shown on purpose
     0.300               28.0      180.0
`,
  good: `headnote 1
bench north
  shows      flow at 28 inH2O
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
     0.200               22.4      120.2  # allow off-target: shown on purpose
     0.300               28.0      180.0
`,
  display: "flow",
  checkRun(result, report) {
    const { bench, run } = result.setup;
    if (bench?.shows?.at === undefined) return;
    const displays = columnValues(run.table, "flow");
    if (displays !== undefined) checkRows(result, bench.id, displays, report);
  },
});

function checkRows(result: RunResult, bench: string, displays: ColumnValues, report: Report<Args>): void {
  const { within, target } = result.setup;
  const off = (row: RowResult) =>
    Math.abs((row.depression ?? 0) - target.value.value) > within.value * (1 + 1e-9);
  const judged = result.rows.filter((row) => row.row.void === undefined && row.flow !== undefined);
  if (!judged.some(off)) return;
  const curve = displayCurve(
    judged.filter((row) => !off(row)),
    (row) => displays.value(row),
  );
  for (const row of judged) {
    if (!off(row) || row.depression === undefined || row.lift === undefined) continue;
    const expected = curve(row.lift);
    const shown = displays.value(row.row);
    if (expected === undefined || shown === undefined || !(shown > 0) || !(row.depression > 0)) continue;
    const change = Math.log(shown / expected);
    const law = Math.log(row.depression / target.value.value) / 2;
    if (!followsLaw(change, law, result)) continue;
    report(rowSpan(row.row), {
      bench,
      depression: inUnit(row.depression, target.value.unit),
      change: percent(Math.exp(change) - 1),
      expected: percent(Math.exp(law) - 1),
    });
    break;
  }
}

/** Nearer to the square root than to no change at all, and more than repeatability makes of it. */
function followsLaw(change: number, law: number, result: RunResult): boolean {
  const noise = 1.96 * Math.SQRT2 * result.repeatability.deviation;
  return Math.abs(change - law) < Math.abs(law) / 2 && Math.abs(change) > noise;
}

/** What the display shows at a lift, from the rows on target: those of the lift itself, else a line between its neighbours. */
function displayCurve(
  rows: readonly RowResult[],
  display: (row: RowResult["row"]) => number | undefined,
): (lift: number) => number | undefined {
  const byLift = new Map<number, number>();
  for (const { row, lift } of rows) {
    const shown = display(row);
    if (lift !== undefined && shown !== undefined && !byLift.has(lift)) byLift.set(lift, shown);
  }
  const curve = [...byLift].map(([lift, value]) => ({ lift, value })).sort((a, b) => a.lift - b.lift);
  return (lift) => byLift.get(lift) ?? valueAt(curve, lift);
}
