// A flat top that the bench crept up to: a question, not an answer.

import { flatTop as findFlatTop } from "../../shared/calc/flat-top.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { traceAnswer } from "./flat-top-answer.ts";
import { type FlatTopArgs, flatTopArgs, flatTopMessage, flatTopPlace } from "./flat-top-words.ts";
import { rule } from "./rule.ts";
import { headingSpan } from "./trace-words.ts";

const SLOW_SESSION = INTAKE_SESSION.replace(
  "  repeat     0.4 %\n",
  "  repeat     0.4 %\n  quick      2.0 s\n",
);

export const flatTop = rule<FlatTopArgs>({
  code: "flat-top",
  severity: "warning",
  message: flatTopMessage,
  help: ({ remedy }) => remedy,
  what: "The top of the curve is flat, geometry does not explain it, and the bench was slow to come up to its depression there. A trace of one of its lifts from a quick approach answers it: a port that stays attached makes it a hint.",
  why: "A slow approach can carry air round a short side that lets go when the speed comes quickly, as in an engine: the curve then only goes flat.",
  bad: `${SLOW_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
     0.300               28.0      150.0        5.1
     0.400               28.0      185.0        6.0
     0.500               28.0      185.9        7.4
     0.600               28.0      185.6        6.8
`,
  good: `${SLOW_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
     0.300               28.0      150.0        1.3
     0.400               28.0      185.0        1.5
     0.500               28.0      185.9        1.6
     0.600               28.0      185.6        1.6
`,
  checkRun(result, report, _limits, traces) {
    const flat = findFlatTop(result);
    const place = flat && flatTopPlace(flat);
    if (flat === undefined || place === undefined) return;
    const answer = traceAnswer(flat, traces);
    report(place.span, flatTopArgs(result, flat, answer), {
      related: [
        ...place.related,
        ...(answer === undefined ? [] : [{ span: ofItsRun(answer.trace), message: "the trace" }]),
      ],
      ...(answer?.kind === "stays" && { severity: "hint" }),
    });
  },
});

/** The heading of a trace, counted from that of its run. */
function ofItsRun(trace: ComputedTrace): Span {
  return shifted(headingSpan(trace), -trace.run.start);
}
