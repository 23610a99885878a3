// Samples that are missing in a trace: how long, where, and what cannot be relied on because of it.
import { isGap } from "../../shared/calc/trace/gaps.ts";
import type { TraceGaps, TraceResult } from "../../shared/model/trace-result.ts";
import { tracedRun } from "./examples.ts";
import { rule } from "./rule.ts";
import { headingSpan, sampleSpan, timeWords } from "./trace-words.ts";

/** Tenths of a second with none between 0.5 s and 1.7 s. */
const INTERRUPTED: readonly number[] = [0, 1, 2, 3, 4, 5, 17, 18, 19, 20, 21, 22, 23, 24, 25];

export const traceGap = rule<{ gap: string; more: string; doubt: string }>({
  code: "trace-gap",
  severity: "warning",
  message: ({ gap, more, doubt }) => `the trace has no samples ${gap}${more}: ${doubt}`,
  help: () => "look at the logger's cables and at what else it had to do, and take the trace again",
  what: "Samples of a trace stand more than five times as far apart as they usually do.",
  why: "What happened in a gap left no mark: when the depression came to hold, or when the port let go, is then known no better than the gap is long.",
  bad: tracedRun(0, INTERRUPTED),
  good: tracedRun(0),
  checkTrace(trace, report) {
    const { result } = trace;
    const { gaps } = result;
    if (gaps === undefined) return;
    const doubts = doubtsOf(result, gaps);
    const words = {
      gap: `for ${timeWords(result, gaps.to - gaps.from)} from ${timeWords(result, gaps.from)} on, where they usually stand ${timeWords(result, result.interval)} apart`,
      more: moreWords(result, gaps),
      doubt: doubts.length === 0 ? "a letting-go that came and went in it is not seen" : doubts.join("; "),
    };
    const related = [{ span: sampleSpan(trace, gaps.from), message: "the last sample before it" }];
    const at = sampleSpan(trace, gaps.to);
    const heading = headingSpan(trace);
    report(at, words, {
      ...(at.line !== heading.line && { related }),
      ...(doubts.length === 0 && { severity: "hint" }),
    });
  },
});

function moreWords(result: TraceResult, { count, missing }: TraceGaps): string {
  if (count === 1) return "";
  const gaps = count === 2 ? "another gap" : `${count - 1} shorter gaps`;
  return ` (and in ${gaps}, ${timeWords(result, missing)} in all)`;
}

/** What the trace tells that a gap leaves open. */
function doubtsOf(result: TraceResult, gaps: TraceGaps): readonly string[] {
  const { settling, steps, steady, interval } = result;
  const settled =
    settling !== undefined && isGap(settling.step, interval)
      ? [
          `the depression came to hold somewhere between ${timeWords(result, settling.time - settling.step)} and ${timeWords(result, settling.time)}`,
        ]
      : settling !== undefined && gaps.to <= settling.time
        ? [
            "on the way up, where a letting-go would not be seen and the fit of the approach has nothing to go by",
          ]
        : [];
  const moved = steps.flatMap(({ kind, time }) => {
    const before = lastBefore(result, time);
    if (!isGap(time - before, interval)) return [];
    const what = kind === "let-go" ? "let go" : "took hold again";
    return [`the port ${what} somewhere between ${timeWords(result, before)} and ${timeWords(result, time)}`];
  });
  const held =
    steady !== undefined && gaps.from >= steady.from && gaps.to <= steady.to
      ? ["the steady means leave it out"]
      : [];
  return [...settled, ...moved, ...held];
}

/** The time of the last sample before a time, s. */
function lastBefore({ samples }: TraceResult, time: number): number {
  const at = samples.time.findIndex((value) => value >= time);
  return samples.time[Math.max(0, at - 1)] ?? time;
}
