// A trace whose depression never comes to stay at the target.
import { tracedRun } from "./examples.ts";
import { rule } from "./rule.ts";
import { depressionWords, headingSpan, timeWords } from "./trace-words.ts";
import { inUnit, written } from "./words.ts";

export const notSettled = rule<{ end: string; depression: string; target: string; within: string }>({
  code: "not-settled",
  severity: "warning",
  message: ({ end, depression, target, within }) =>
    `the depression does not come to stay at ${target} (band ${within}): the trace ends after ${end} at ${depression}`,
  help: () => "log until the depression has held for as long as it took to come up",
  what: "No sample of a trace is the one from which on the depression stays within the band around the target.",
  why: "Without a settled stretch there is no settle time, and nothing to hold an early reading against.",
  bad: tracedRun(
    0,
    Array.from({ length: 12 }, (_, tenths) => tenths),
  ),
  good: tracedRun(0),
  checkTrace(trace, report) {
    const { result } = trace;
    const { time, depression } = result.samples;
    if (result.interval === 0 || result.settling !== undefined) return;
    const { target, within } = result.setup;
    report(headingSpan(trace), {
      end: timeWords(result, time[time.length - 1] ?? 0),
      depression: depressionWords(result, depression[depression.length - 1] ?? 0),
      target: written(target.value),
      within: inUnit(within.value, target.value.unit),
    });
  },
});
