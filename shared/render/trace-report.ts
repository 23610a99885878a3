// A trace in the machine output of `table`.
import type { TableTrace } from "../messages/report.ts";
import type { Approach, AreaStep, Fitted, SteadyMean, TraceResult } from "../model/trace-result.ts";
import type { Unit } from "../quantity/unit.ts";
import { reported, reportedOrNull, reportedSpan } from "./reported.ts";
import { rounded } from "./rounded.ts";
import type { AtLine } from "./table-input.ts";
import { type TraceUnits, traceUnits } from "./trace-units.ts";
import type { WantedUnits } from "./wanted-units.ts";

export function traceReport({ line, result }: AtLine<TraceResult>, wanted: WantedUnits = []): TableTrace {
  const { trace, setup, samples, settling, overshoot, approach, steady, steps, problems } = result;
  const units = traceUnits(result, wanted);
  return {
    line: line + 1,
    run: setup.run.id,
    lift: trace.lift === undefined ? null : reported(trace.lift.value, trace.lift.unit),
    samples: samples.time.length,
    settle:
      settling === undefined
        ? null
        : { time: reported(settling.time, units.time), step: reported(settling.step, units.time) },
    overshoot: reportedOrNull(overshoot, units.depression),
    approach: approach === undefined ? null : approachOf(approach, units),
    steady:
      steady === undefined
        ? null
        : {
            from: reported(steady.from, units.time),
            to: reported(steady.to, units.time),
            samples: steady.samples,
            depression: meanOf(steady.depression, units.depression),
            flow: steady.flow === undefined ? null : meanOf(steady.flow, units.flow),
          },
    steps: steps.map((step) => stepOf(step, units)),
    problems: problems.map(({ kind }) => kind),
  };
}

function approachOf(
  approach: Approach,
  { time, depression }: TraceUnits,
): NonNullable<TableTrace["approach"]> {
  return {
    order: approach.order,
    deadTime: fittedIn(approach.deadTime, time),
    timeConstant: fittedIn(approach.timeConstant, time),
    naturalFrequency: fittedNumber(approach.naturalFrequency),
    damping: fittedNumber(approach.damping),
    scatter: reportedSpan(approach.scatter, depression),
  };
}

function fittedIn(fitted: Fitted | undefined, unit: Unit) {
  if (fitted === undefined || !Number.isFinite(fitted.error)) return null;
  return { value: reported(fitted.value, unit), error: reportedSpan(fitted.error, unit) };
}

function fittedNumber(fitted: Fitted | undefined) {
  if (fitted === undefined || !Number.isFinite(fitted.error)) return null;
  return { value: rounded(fitted.value), error: rounded(fitted.error) };
}

function meanOf({ mean, scatter, effective, error }: SteadyMean, unit: Unit) {
  return {
    mean: reported(mean, unit),
    scatter: reportedSpan(scatter, unit),
    effective: rounded(effective),
    error: reportedSpan(error, unit),
  };
}

function stepOf(step: AreaStep, { time, depression, flow }: TraceUnits): TableTrace["steps"][number] {
  return {
    kind: step.kind,
    time: reported(step.time, time),
    depression: reported(step.depression, depression),
    phase: step.phase,
    size: rounded(step.size),
    error: rounded(step.error),
    before: reported(step.before, flow),
    after: reported(step.after, flow),
    chance: rounded(step.chance),
  };
}
