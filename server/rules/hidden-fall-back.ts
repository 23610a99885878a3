// A fall-back that one bench resolves and another, at the same port and stage, does not show.
import { type HiddenFallBack, hiddenFallBacks } from "../../shared/calc/two-benches.ts";
import { type HiddenArgs, hiddenArgs, hiddenMessage } from "../../shared/render/hidden-words.ts";
import type { ComputedPair } from "../analysis/run-pairs.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";

const TWO_BENCHES = (top: string, remark = "") => `${INTAKE_SESSION}bench south
  shows      flow
  repeat     0.4 %
run quick
  stage      "as cast"
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
     0.300               28.0      150.0        1.3
     0.400               28.0      185.0        1.4
     0.500               28.0      ${top}        1.5${remark}
run slow
  stage      "as cast"
  bench      south
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
     0.300               28.0      149.6        6.1
     0.400               28.0      184.1        7.0
     0.500               28.0      184.9        8.2
`;

export const hiddenFallBack = rule<HiddenArgs>({
  code: "hidden-fall-back",
  severity: "warning",
  message: hiddenMessage,
  help: ({ lift, resolves }) =>
    `the air lets go where ${resolves} shows it: open from shut at full speed at ${lift} on both, or take traces there`,
  what: "The same port at the same stage was read on two benches; one resolves a fall-back, the other was there and does not.",
  why: "The air in an engine moves faster than on any bench. What the quicker bench shows is what the engine will find.",
  bad: TWO_BENCHES("178.0", "  # allow fall-back: it is to be shown"),
  good: TWO_BENCHES("185.6"),
  checkPair(pair, report) {
    const { own, other, place } = pair;
    for (const hidden of hiddenHere(pair)) {
      const isHere = hidden.resolvedBy === "second";
      const [here, there] = isHere
        ? [hidden.at.rows[0], hidden.fall.clearest.station.rows[0]]
        : [hidden.fall.clearest.station.rows[0], hidden.at.rows[0]];
      if (here === undefined || there === undefined) continue;
      const span = rowSpan(there.row);
      const related = {
        file: place.path,
        span: { ...span, line: span.line + place.start },
        message: isHere ? "where it falls back" : "where it does not show",
      };
      report(rowSpan(here.row), hiddenArgs(own, other, hidden), { related: [related] });
    }
  },
});

/**
 * What a pair of one stage on two benches has to tell at its own run. Two runs of one file make a pair each way round: it
 * is told once, at the run that hides the fall-back.
 */
export function hiddenHere({ as, own, other, place }: ComputedPair): readonly HiddenFallBack[] {
  if (as !== "bench") return [];
  return hiddenFallBacks(own, other).filter(({ resolvedBy }) => resolvedBy === "second" || !place.isOwnFile);
}
