// Flow that falls while the valve still opens, by more than chance.

import type { FallBack, RunResult } from "../../shared/model/result.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { figures, liftOf, liftWords, percent } from "./words.ts";

export const fallBack = rule<{
  depth: string;
  lift: string;
  flows: string;
  chance: string;
  recovery: string;
  repeat: string;
}>({
  code: "fall-back",
  severity: "warning",
  message: ({ depth, lift, flows, chance, recovery }) =>
    `flow falls back ${depth} after ${lift} (${flows}; chance alone gives ${chance} here)${recovery}`,
  help: ({ repeat }) => `repeat ${repeat}; if it stays, look at the short side`,
  what: "Corrected flow drops while the valve opens further, by more than a flat curve of as many stations does by chance in 5 % of sweeps.",
  why: "A healthy curve flattens. One that drops has let go of a wall, mostly of the short side, and an engine will find that too.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.300               28.0      150.0
     0.400               28.0      185.0
     0.500               28.0      178.0
     0.600               28.0      179.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.300               28.0      150.0
     0.400               28.0      185.0
     0.500               28.0      191.0
     0.600               28.0      192.0
`,
  checkRun(result, report) {
    for (const fall of result.fallBacks) {
      if (!fall.resolved) continue;
      const place = fallPlace(result, fall);
      if (place === undefined) continue;
      const { flow } = displayUnits(result.setup);
      const [from, to] = [fall.onset, fall.deepest].map((station) => figures(fromSI(station.flow, flow)));
      report(
        place.span,
        {
          depth: percent(fall.depth),
          lift: place.onset,
          flows: `${from} \u2192 ${to} ${flow.symbol}`,
          chance: percent(fall.chance),
          recovery: recoveryWords(result, fall),
          repeat: place.repeat,
        },
        { related: place.related },
      );
    }
  },
});

function recoveryWords(result: RunResult, { recovery }: FallBack): string {
  const row = recovery?.rows[0];
  return row === undefined ? "; it does not recover" : `; it recovers at ${liftWords(result.setup.run, row)}`;
}

/** Where a fall is marked, and the lifts to read again: halfway behind the onset, and the station behind it. */
export function fallPlace(result: RunResult, { onset, deepest, last }: FallBack) {
  const first = onset.rows[0];
  const lowest = deepest.rows[0];
  const end = last.rows[0];
  if (first === undefined || lowest === undefined || end === undefined) return undefined;
  const { rising, setup } = result;
  const next = rising[rising.indexOf(onset) + 1];
  const { lift } = displayUnits(setup);
  const lifts = next === undefined ? [] : [(onset.lift + next.lift) / 2, next.lift];
  const repeat = lifts.map((value) => liftOf(value, lift)).join(" and ");
  const related = [
    { span: rowSpan(first.row), message: "the onset" },
    ...(end === lowest ? [] : [{ span: rowSpan(end.row), message: "up to here" }]),
  ];
  return {
    span: rowSpan(lowest.row),
    onset: liftWords(result.setup.run, first),
    repeat: `${repeat} ${lift.symbol}`,
    related,
  };
}
