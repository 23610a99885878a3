// A trace from which nothing can be computed.
import type { TraceProblem, TraceResult } from "../../shared/model/trace-result.ts";
import { nearest } from "../../shared/quantity/nearest.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { BARE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";
import { depressionWords, headingSpan } from "./trace-words.ts";
import { written } from "./words.ts";

export const traceUnusable = rule<{ why: string; remedy: string }>({
  code: "trace-unusable",
  severity: "warning",
  message: ({ why }) => `nothing can be computed from this trace: ${why}`,
  help: ({ remedy }) => remedy,
  what: "A trace has no log that can be read, too few samples, samples out of order, or a depression in another unit than it says.",
  why: "Settle time, steady window and letting go come from the trace; without it an early reading cannot be judged.",
  bad: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.500               28.0      195.2
trace 0.500 in of r1
  log "r1-0500.csv" time "t" s depression "dp" inH2O flow "q" cfm
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.500               28.0      195.2
trace 0.500 in of r1
  log "r1-0500.csv" time "t" s depression "dp" inH2O
#- r1-0500.csv
t,dp
0.0,0.0
0.2,13.6
0.4,20.6
0.6,24.2
0.8,26.1
1.0,27.0
1.5,27.8
2.0,27.9
2.5,28.0
3.0,28.0
`,
  checkTrace(trace, report) {
    const problem = fatal(trace.result);
    if (problem === undefined) return;
    report(placeOf(trace), wordsOf(problem, trace.result));
  },
});

/** Of several the one that says most; samples that are left out are told of elsewhere. */
function fatal({ problems, interval }: TraceResult): TraceProblem | undefined {
  if (interval > 0) return undefined;
  const rank = (problem: TraceProblem) =>
    problem.kind === "not-numbers" ? 2 : problem.kind === "few" ? 1 : 0;
  return [...problems].sort((a, b) => rank(a) - rank(b))[0];
}

function placeOf(trace: ComputedTrace) {
  const { entity, start } = trace.placed;
  const log = entity.origin.lines.get("log");
  return log === undefined ? headingSpan(trace) : { ...log, line: log.line + start };
}

function wordsOf(problem: TraceProblem, result: TraceResult): { why: string; remedy: string } {
  switch (problem.kind) {
    case "two-sources":
      return { why: "it has a log and rows of its own", remedy: "keep one of the two" };
    case "unreadable":
      return {
        why: `"${problem.path}" cannot be read: ${problem.problem}`,
        remedy: "give the path from this file's own folder, with /",
      };
    case "outside":
      return {
        why: `"${problem.path}" lies outside the workspace`,
        remedy: "move the log below the folder that holds all records",
      };
    case "no-column":
      return missingColumnWords(problem);
    case "other-unit":
      return {
        why: `the log has ${problem.column} in ${problem.found}, the record says ${problem.stated}`,
        remedy: `write ${problem.found} behind "${problem.column}", if the log is right`,
      };
    case "few":
      return {
        why: `${["no sample", "one sample"][problem.samples] ?? `${problem.samples} samples`} can be used, ${problem.least} are wanted`,
        remedy: "log ten samples a second or more, from before the valve opens until the depression has held",
      };
    case "backwards":
      return {
        why: `time runs backwards in ${problem.samples} of ${problem.of} samples, first in sample ${problem.first}`,
        remedy: "keep one approach a trace, in the order in which it was logged",
      };
    case "not-numbers":
      return { why: "no sample has both a time and a depression", remedy: "look into the log" };
    case "negative":
      return {
        why: "the depression is below zero",
        remedy: "write it as a difference of pressure above zero, whichever way the air goes",
      };
    case "far-beyond":
      return {
        why: `the depression reaches ${depressionWords(result, problem.highest)}, far beyond the target of ${written(result.setup.target.value)}`,
        remedy: "look at the unit of the depression, and whether all samples are in it",
      };
  }
}

function missingColumnWords({ column, columns }: Extract<TraceProblem, { kind: "no-column" }>) {
  const [near] = nearest(column, columns);
  const has = columns.length === 0 ? "it has no head" : `it has ${columns.join(", ")}`;
  return {
    why: `the log has no column "${column}"; ${has}`,
    remedy: near === undefined ? "name its columns as the log does" : `did you mean "${near}"?`,
  };
}
