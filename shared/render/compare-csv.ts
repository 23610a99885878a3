// Sets comparisons as one CSV table, one lift of one run a line.
import type { CurveAt } from "../calc/curve-at.ts";
import { isSameLift } from "../calc/gain.ts";
import { fromSI } from "../quantity/unit.ts";
import { printable } from "../text/printable.ts";
import type { CompareRun } from "./compare-input.ts";
import type { Compared } from "./compare-table.ts";
import { type CsvCell, csv } from "./csv.ts";
import { displayUnits } from "./display-units.ts";
import { rounded } from "./rounded.ts";

/** In the baseline's units; `read` says which of the two was read at the lift, the other lies between two readings. */
export function compareCsv(baseline: CompareRun, all: readonly Compared[]): string {
  const { lift: liftUnit, flow: flowUnit } = displayUnits(baseline.result.setup);
  const heads = [
    "baseline",
    "run",
    "branch",
    `lift[${liftUnit.symbol}]`,
    `baseline flow[${flowUnit.symbol}]`,
    `run flow[${flowUnit.symbol}]`,
    `difference[${flowUnit.symbol}]`,
    "gain[%]",
    "chance[%]",
    "resolved",
    "En",
    "left over[%]",
    "read",
  ];
  const flowIn = (at: CurveAt | undefined) => (at === undefined ? undefined : fromSI(at.flow, flowUnit));
  const number = (value: number | undefined): CsvCell => (value === undefined ? undefined : rounded(value));
  const lines = all.flatMap(({ run, comparison, isTold, benches }) =>
    comparison.lifts.map(({ lift, branch, own, baseline: base, gained }): readonly CsvCell[] => {
      const onBenches =
        branch === "rising" ? benches?.lifts.find((other) => isSameLift(other.lift, lift)) : undefined;
      const told = isTold ? gained : undefined;
      const [ours, theirs] = [flowIn(own), flowIn(base)];
      const difference = ours === undefined || theirs === undefined ? undefined : ours - theirs;
      return [
        printable(baseline.label),
        printable(run.label),
        branch,
        rounded(fromSI(lift, liftUnit)),
        number(theirs),
        number(ours),
        isTold ? number(difference) : undefined,
        number(told && 100 * told.gain),
        number(told && 100 * told.noise),
        told && (told.isResolved ? "yes" : "no"),
        number(onBenches?.en),
        number(onBenches?.residual && 100 * onBenches.residual),
        readWords(own, base),
      ];
    }),
  );
  return csv([heads, ...lines]);
}

function readWords(own: CurveAt | undefined, baseline: CurveAt | undefined): string {
  if (own?.isRead && baseline?.isRead) return "both";
  return own?.isRead ? "run" : "baseline";
}
