// A port that lets go while its depression comes up or holds.
import { type FlatTop, flatTop } from "../../shared/calc/flat-top.ts";
import { isLift } from "../../shared/calc/trace/trace-flow.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { tracedRun } from "./examples.ts";
import { type FileInput, rule } from "./rule.ts";
import { readingsAt, type StepWords, sampleSpan, stepWords } from "./trace-words.ts";

export const letGo = rule<StepWords & { evidence: string }>({
  code: "let-go",
  severity: "warning",
  message: ({ time, depression, phase, size, flows, chance, evidence }) =>
    `flow lets go at ${time}, at ${depression} ${phase}: the apparent area steps down ${size} (${flows}; scatter alone does this ${chance})${evidence}`,
  help: () =>
    "the port is on its edge at this lift, whatever the sweep shows: look at the short side, and open from shut at full speed again",
  what: "The apparent area of a trace, flow over the square root of depression, steps down at once by more than the scatter around it explains in 5 % of traces. Steps below half a per cent, and what happens below 40 % of the target depression, are not looked for; a bench that rises through the rest in a few samples needs a quicker logger.",
  why: "A quick approach tears the air off where a slow one carries it round. An engine is quicker than any bench.",
  bad: tracedRun(0.05),
  good: tracedRun(0),
  checkTrace(trace, report, { runs, compute }) {
    for (const step of trace.result.steps) {
      if (step.kind !== "let-go") continue;
      const related = readingsAt(trace).map((span) => ({
        span,
        message: "the run's reading at this lift",
      }));
      report(
        sampleSpan(trace, step.time),
        { ...stepWords(trace.result, step), evidence: evidence(trace, runs, compute) },
        { related },
      );
    }
  },
});

/** What the sweep of the trace's run shows at this lift: the same thing, or a flat top that hides it. */
function evidence(
  { placed, run }: ComputedTrace,
  runs: FileInput["runs"],
  compute: FileInput["compute"],
): string {
  const settled = runs.find((other) => other.placed.path === run.path && other.placed.start === run.start);
  const lift = placed.entity.lift?.value;
  if (settled === undefined || lift === undefined) return "";
  const result = compute(settled);
  const { id } = run.setup.run;
  const isAmong = ({ stations }: FlatTop) => stations.some((station) => isLift(station.lift, lift));
  const flat = flatTop(result);
  if (flat !== undefined && isAmong(flat)) return `; the flat top of ${id} hides it`;
  const falls = result.fallBacks.some(
    ({ resolved, onset, last }) => resolved && lift > onset.lift && lift <= last.lift + ONE_STEP,
  );
  return falls ? `; ${id} falls back here too` : "";
}

/** Lifts of two blocks that are written alike may differ by rounding, m. */
const ONE_STEP = 1e-6;
