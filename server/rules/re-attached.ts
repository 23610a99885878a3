// A port that takes hold of a wall again.
import { tracedRun } from "./examples.ts";
import { rule } from "./rule.ts";
import { type StepWords, sampleSpan, stepWords } from "./trace-words.ts";

export const reAttached = rule<StepWords>({
  code: "re-attached",
  severity: "hint",
  message: ({ time, depression, phase, size, flows, chance }) =>
    `flow lies against the wall again at ${time}, at ${depression} ${phase}: the apparent area steps up ${size} (${flows}; scatter alone does this ${chance})`,
  help: () =>
    "the flow has two states here: read this lift on the way up and on the way down, three times each",
  what: "The apparent area of a trace steps up at once by more than the scatter around it explains in 5 % of traces. As for `let-go`, steps below half a per cent and below 40 % of the target depression are not looked for.",
  why: "A port that changes its mind on the bench has two flows at one lift, and a single reading is either of them.",
  bad: tracedRun(-0.05),
  good: tracedRun(0),
  checkTrace(trace, report) {
    for (const step of trace.result.steps) {
      if (step.kind !== "re-attached") continue;
      report(sampleSpan(trace, step.time), stepWords(trace.result, step));
    }
  },
});
