// A run that ends where it began and does not read the same there.
import { isUsable } from "../../shared/calc/evaluate.ts";
import { widening } from "../../shared/calc/repeatability.ts";
import type { RowResult, RunResult } from "../../shared/model/result.ts";
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
  bad: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n  0.200 28.0 108.0\n  0.100 28.0 56.5\n",
  good: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n  0.200 28.0 108.0\n  0.100 28.0 55.2\n",
  checkRun(result, report) {
    const { repeatability, rows } = result;
    const first = rows.find(isUsable);
    const back = returnRow(result);
    if (first?.flow === undefined || back?.flow === undefined) return;
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

/** The last usable row of a run, if it returns to the first one's lift after others in between. */
export function returnRow({ rows }: RunResult): RowResult | undefined {
  const first = rows.find(isUsable);
  const last = rows.findLast(isUsable);
  if (first === undefined || last === undefined || first === last || first.lift !== last.lift)
    return undefined;
  return rows.some((row) => isUsable(row) && row.lift !== first.lift) ? last : undefined;
}
