// Readings of one lift that differ more than the bench repeats.
import { rangeQuantile } from "../../shared/calc/range-of-normals.ts";
import { widening } from "../../shared/calc/repeatability.ts";
import type { Station } from "../../shared/model/result.ts";
import { returnRow } from "./drift.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { liftWords, percent } from "./words.ts";

export const repeatsDisagree = rule<{ count: number; lift: string; range: string; limit: string }>({
  code: "repeats-disagree",
  severity: "warning",
  message: ({ count, lift, range, limit }) =>
    `the ${count} readings at ${lift} are ${range} apart; chance alone gives ${limit}`,
  help: () =>
    "read this lift once more; if it goes on, look for a loose set-up or for flow with two states here",
  what: "Readings of one lift in one direction of a run differ by more than the bench's repeatability allows.",
  why: "One of them is wrong, or the flow has two states at this lift; a mean of both would hide either.",
  bad: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n  0.200 28.0 108.0\n  0.200 28.0 112.0\n",
  good: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n  0.200 28.0 108.0\n  0.200 28.0 109.0\n",
  checkRun(result, report) {
    const { rising, falling, repeatability } = result;
    const back = returnRow(result);
    for (const station of [...rising, ...falling]) {
      const rows = station.rows.filter((row) => row !== back);
      const last = rows.at(-1);
      if (rows.length < 2 || last === undefined) continue;
      const apart = spread(rows);
      const limit =
        (rangeQuantile(rows.length) ?? Number.POSITIVE_INFINITY) *
        repeatability.deviation *
        widening(repeatability);
      if (!(apart > limit)) continue;
      const related = rows
        .slice(0, -1)
        .map(({ row }) => ({ span: rowSpan(row), message: "an earlier reading" }));
      const lift = liftWords(result.setup.run, last);
      report(
        rowSpan(last.row),
        { count: rows.length, lift, range: percent(apart), limit: percent(limit) },
        { related },
      );
    }
  },
});

/** Largest less smallest corrected flow, relative to their mean. */
function spread(rows: Station["rows"]): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (const { flow } of rows) {
    const corrected = flow?.corrected ?? 0;
    low = Math.min(low, corrected);
    high = Math.max(high, corrected);
    sum += corrected;
  }
  return (high - low) / (sum / rows.length);
}
