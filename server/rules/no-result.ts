// A bench whose display this version cannot turn into results.

import { findMeter } from "../../shared/calc/meters/index.ts";
import { BARE_SESSION } from "./examples.ts";
import { conditionsSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noResult = rule<{ bench: string; kind: string }>({
  code: "no-result",
  severity: "warning",
  message: ({ bench, kind }) =>
    `bench '${bench}' shows ${kind}, which this version of Headnote reads and keeps but does not compute yet`,
  help: () => "the readings are safe as they are; they will give results once their computation is there",
  what: "The bench shows a pressure drop, or flow in the meter's own air, whose computation is not part of this version.",
  why: "A number that is not computed should be missing in plain sight and never be guessed.",
  bad: `headnote 1
bench north
  shows      meter-flow
  meter      downstream
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    const { bench } = run.setup;
    const kind = bench?.shows?.kind;
    if (bench === undefined || kind === undefined || findMeter(kind) !== undefined) return;
    report(conditionsSpan(input, run), { bench: bench.id, kind });
  },
});
