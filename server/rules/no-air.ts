// A run without air that can be used.

import type { StatedAir } from "../../shared/model/model.ts";
import { BARE_SESSION } from "./examples.ts";
import { conditionsSpan, isWritten, statedSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noAir = rule<{ problem: string }>({
  code: "no-air",
  severity: "warning",
  message: ({ problem }) => `${problem}; the standard atmosphere is taken`,
  help: () => "state the air of the day: air 71.5 degF 29.18 inHg 42 %RH",
  what: "Neither the run nor its session states the air, or what it states is not enough or cannot be.",
  why: "Mass flow, effective area and every reference air stand on the density of the air of the day.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
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
    const { air, statedAir } = run.setup;
    if (air.source !== "default") return;
    if (statedAir === undefined && isWritten(input, run, "air")) return;
    const span = statedAir === undefined ? conditionsSpan(input, run) : statedSpan(input, run, "air");
    report(span, { problem: statedAir === undefined ? "no air is stated" : problemOf(statedAir.value) });
  },
});

function problemOf(air: StatedAir): string {
  if (air.temperature === undefined) return "the air has no temperature";
  if (air.pressure !== undefined) return "no shop has this air";
  if (air.altimeter === undefined) return "the air has no pressure";
  return air.elevation === undefined ? "the altimeter setting has no elevation" : "no shop has this air";
}
