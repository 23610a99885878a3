// Samples of a trace that cannot be used, while the others can.
import { tracedRun } from "./examples.ts";
import { rule } from "./rule.ts";
import { headingSpan } from "./trace-words.ts";

export const samplesLeftOut = rule<{ what: string }>({
  code: "samples-left-out",
  severity: "hint",
  message: ({ what }) => `${what}`,
  help: () => "look at the logger's clock and its cables; the rest of the trace is used",
  what: "Some samples of a trace have no number, or a time that does not come after the one before; they are left out.",
  why: "A gap on the way up hides when the depression came to hold, and a step inside it is not seen.",
  bad: tracedRun(0).replace("     1.70", "     1.50"),
  good: tracedRun(0),
  checkTrace(trace, report) {
    if (trace.result.interval === 0) return;
    for (const problem of trace.result.problems) {
      const isClock = problem.kind === "backwards";
      if (!isClock && problem.kind !== "not-numbers") continue;
      const { samples, of, first } = problem;
      const verb = samples === 1 ? "is" : "are";
      const reason = isClock ? "time does not go on there" : "no number can be read there";
      report(headingSpan(trace), {
        what: `${samples} of ${of} samples ${verb} left out, first sample ${first}: ${reason}`,
      });
    }
  },
});
