// Readings of one lift that differ more than the bench repeats.

import { rangeQuantile } from "../../shared/calc/range-of-normals.ts";
import { widening } from "../../shared/calc/repeatability.ts";
import { returnRow } from "../../shared/calc/return-row.ts";
import type { Station } from "../../shared/model/result.ts";
import { INTAKE_SESSION } from "./examples.ts";
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
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
     0.200               28.0      112.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
     0.200               28.0      109.0
`,
  checkOdd(result, report) {
    const { repeated, repeatability } = result;
    if (repeated.length === 0) return;
    const back = returnRow(result);
    for (const station of repeated) {
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
