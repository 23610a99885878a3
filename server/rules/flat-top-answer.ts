// What the traces of a run answer to its flat top: whether the port lets go there.
import type { FlatTop } from "../../shared/calc/flat-top.ts";
import { isLift } from "../../shared/calc/trace/trace-flow.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { timeWords } from "./trace-words.ts";
import { written } from "./words.ts";

/** `as-slow` is none: a trace of an approach as slow as the sweep's shows no more than the sweep does. */
export interface TraceAnswer {
  readonly kind: "lets-go" | "stays" | "as-slow";
  readonly trace: ComputedTrace;
  /** s; when it lets go, or else when the depression had come to hold. */
  readonly time: number;
}

/** The clearest answer among the traces of the flat top's own run; `undefined` where none was taken in the flat. */
export function traceAnswer(
  { stations, quick }: FlatTop,
  traces: readonly ComputedTrace[],
): TraceAnswer | undefined {
  const answers = traces.flatMap((trace): readonly TraceAnswer[] => {
    const { flow, settling, steps } = trace.result;
    const isInFlat = stations.some(({ lift }) => isLift(lift, trace.placed.entity.lift?.value));
    if (!isInFlat || flow === undefined) return [];
    const step = steps.find(({ kind }) => kind === "let-go");
    if (step !== undefined) return [{ kind: "lets-go", trace, time: step.time }];
    if (settling === undefined) return [];
    const isQuick = settling.time <= quick.time * (1 + 1e-9);
    return [{ kind: isQuick ? "stays" : "as-slow", trace, time: settling.time }];
  });
  const first = (kind: TraceAnswer["kind"]) => answers.find((answer) => answer.kind === kind);
  return first("lets-go") ?? first("stays") ?? first("as-slow");
}

/** The answer as the finding goes on with it; nothing where there is none. */
export function answerWords(answer: TraceAnswer | undefined): string {
  if (answer === undefined) return "";
  const { kind, trace, time } = answer;
  const at = `; the trace at ${liftOf(trace)}`;
  const when = timeWords(trace.result, time);
  if (kind === "lets-go") return `${at} lets go at ${when}, which the flat hides`;
  if (kind === "stays") return `${at} came up in ${when} and shows no letting-go`;
  return `${at} shows no letting-go, but took ${when} to come up and so answers nothing`;
}

/** What to do at the bench; `lift` is where the approach took longest. */
export function answerRemedy(answer: TraceAnswer | undefined, lift: string): string {
  if (answer?.kind === "lets-go")
    return "the port is on its edge, and an engine will find that: look at the short side";
  if (answer?.kind === "stays")
    return `at ${liftOf(answer.trace)} the air stays attached on a quick approach too; trace the other lifts of the flat as well`;
  const quickly = "open from shut at full speed";
  return answer === undefined
    ? `a slow approach may carry air that would let go: a trace of ${lift} tells, ${quickly}`
    : `a slow approach may carry air that would let go: ${quickly} at ${lift}, and trace that`;
}

function liftOf({ placed }: ComputedTrace): string {
  const { lift } = placed.entity;
  return lift === undefined ? "" : written(lift);
}
