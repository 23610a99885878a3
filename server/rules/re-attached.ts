// A port that takes hold of a wall again.
import { tracedRun } from "./examples.ts";
import { PHASES } from "./let-go.ts";
import { rule } from "./rule.ts";
import { chanceWords, depressionWords, flowsWords, sampleSpan, timeWords } from "./trace-words.ts";
import { percent } from "./words.ts";

export const reAttached = rule<{
  time: string;
  depression: string;
  phase: string;
  size: string;
  flows: string;
  chance: string;
}>({
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
      report(sampleSpan(trace, step.time), {
        time: timeWords(trace.result, step.time),
        depression: depressionWords(trace.result, step.depression),
        phase: PHASES[step.phase],
        size: percent(step.size),
        flows: flowsWords(trace.result, step.before, step.after),
        chance: chanceWords(step.chance),
      });
    }
  },
});
