// Several runs in a sentence or two: from where to where they go, and whose the ends are.
import { summary } from "../calc/summary.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { displayUnits } from "./display-units.ts";
import type { NamedRun } from "./shared-facts.ts";
import { shownDecimals } from "./shown-number.ts";
import type { WantedUnits } from "./wanted-units.ts";

interface Named {
  readonly label: string;
  readonly flow: number;
}

/** Peaks, and means where they are over the same lifts; nothing for runs that were not quoted alike. */
export function sharedSummary(runs: readonly NamedRun[], wanted: WantedUnits = []): readonly string[] {
  const [first] = runs;
  if (first === undefined || !runs.every((run) => isAlike(run, first))) return [];
  const { flow: unit } = displayUnits(first.result.setup, wanted);
  const all = runs.map(({ label, result }) => ({ label, found: summary(result) }));
  const uncertainty = first.result.rising.at(-1)?.uncertainty;
  const told = (what: string, values: readonly Named[]): readonly string[] => {
    if (values.length < runs.length) return [];
    const sorted = values.toSorted((a, b) => a.flow - b.flow);
    const [low, high] = [sorted[0], sorted.at(-1)];
    if (low === undefined || high === undefined || !(low.flow > 0)) return [];
    const decimals = shownDecimals(fromSI(high.flow, unit), uncertainty);
    const [from, to] = [low, high].map(({ flow }) => formatFixed(fromSI(flow, unit), decimals));
    const apart = formatFixed(100 * (high.flow / low.flow - 1), 1);
    return [`${what} ${from} (${low.label}) to ${to} ${unit.symbol} (${high.label}), ${apart} % apart`];
  };
  const peaks = all.flatMap(({ label, found: { peak } }) =>
    peak === undefined ? [] : [{ label, flow: peak.flow }],
  );
  const means = all.flatMap(({ label, found: { mean } }) => (mean === undefined ? [] : [{ label, ...mean }]));
  const isOverOne = means.every(({ from, to }) => from === means[0]?.from && to === means[0]?.to);
  return [...told("peaks", peaks), ...(isOverOne ? told("means over lift", means) : [])];
}

function isAlike({ result: { setup: a } }: NamedRun, { result: { setup: b } }: NamedRun): boolean {
  return (
    a.quote.value.value === b.quote.value.value &&
    a.reference?.value.name === b.reference?.value.name &&
    a.port?.side === b.port?.side
  );
}
