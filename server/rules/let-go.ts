// A port that lets go while its depression comes up or holds.
import { tracedRun } from "./examples.ts";
import { rule } from "./rule.ts";
import {
  chanceWords,
  depressionWords,
  flowsWords,
  readingsAt,
  sampleSpan,
  timeWords,
} from "./trace-words.ts";
import { percent } from "./words.ts";

/** How the depression moved, as a message says it. */
export const PHASES = { rising: "and rising", holding: "and holding", falling: "on the way down" } as const;

export const letGo = rule<{
  time: string;
  depression: string;
  phase: string;
  size: string;
  flows: string;
  chance: string;
}>({
  code: "let-go",
  severity: "warning",
  message: ({ time, depression, phase, size, flows, chance }) =>
    `flow lets go at ${time}, at ${depression} ${phase}: the apparent area steps down ${size} (${flows}; scatter alone does this ${chance})`,
  help: () =>
    "the port is on its edge at this lift, whatever the sweep shows: look at the short side, and open from shut at full speed again",
  what: "The apparent area of a trace, flow over the square root of depression, steps down at once by more than the scatter around it explains in 5 % of traces.",
  why: "A quick approach tears the air off where a slow one carries it round. An engine is quicker than any bench.",
  bad: tracedRun(0.05),
  good: tracedRun(0),
  check({ traces }, report) {
    for (const trace of traces()) {
      for (const step of trace.result.steps) {
        if (step.kind !== "let-go") continue;
        const related = readingsAt(trace).map((span) => ({
          span,
          message: "the run's reading at this lift",
        }));
        report(
          sampleSpan(trace, step.time),
          {
            time: timeWords(trace.result, step.time),
            depression: depressionWords(trace.result, step.depression),
            phase: PHASES[step.phase],
            size: percent(step.size),
            flows: flowsWords(trace.result, step.before, step.after),
            chance: chanceWords(step.chance),
          },
          { related },
        );
      }
    }
  },
});
