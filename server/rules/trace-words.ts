// How the numbers of a trace are said: in its own units.
import { rowsAtLift } from "../../shared/calc/trace/trace-flow.ts";
import type { AreaStep, TraceResult } from "../../shared/model/trace-result.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { fromSI } from "../../shared/quantity/unit.ts";
import { traceUnits } from "../../shared/render/trace-units.ts";
import { type Span, shifted } from "../../shared/text/span.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { rowSpan } from "./places.ts";
import { figures, inUnit, percent } from "./words.ts";

/** A time with the digits that the samples' distance deserves. */
export function timeWords(result: TraceResult, time: number): string {
  const { time: unit } = traceUnits(result);
  const step = result.interval / unit.factor;
  const decimals = step > 0 ? Math.min(3, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))) : 2;
  return `${formatFixed(fromSI(time, unit), decimals)} ${unit.symbol}`;
}

/** A depression to a tenth of the band. */
export function depressionWords(result: TraceResult, depression: number): string {
  return inUnit(depression, traceUnits(result).depression);
}

/** Two corrected flows, one after the other. */
function flowsWords(result: TraceResult, before: number, after: number): string {
  const { flow } = traceUnits(result);
  return `${figures(fromSI(before, flow))} \u2192 ${figures(fromSI(after, flow))} ${flow.symbol}`;
}

/** How rarely chance does something: `less than 1 in 10 000` at the least. */
function chanceWords(chance: number): string {
  if (!(chance > 1e-4)) return "less than once in 10 000 traces";
  return `once in ${Math.max(2, Math.round(1 / chance))} traces`;
}

const PHASES = { rising: "and rising", holding: "and holding", falling: "on the way down" } as const;

/** What a message says of a step of the apparent area. */
export type StepWords = {
  readonly time: string;
  readonly depression: string;
  /** How the depression moved. */
  readonly phase: string;
  readonly size: string;
  readonly flows: string;
  readonly chance: string;
};

export function stepWords(result: TraceResult, step: AreaStep): StepWords {
  return {
    time: timeWords(result, step.time),
    depression: depressionWords(result, step.depression),
    phase: PHASES[step.phase],
    size: percent(step.size),
    flows: flowsWords(result, step.before, step.after),
    chance: chanceWords(step.chance),
  };
}

/** Where a trace is marked: its heading. */
export function headingSpan({ placed }: ComputedTrace): Span {
  return shifted(placed.entity.origin.heading, placed.start);
}

/** The row of a time, or the heading where the samples stand in a log. */
export function sampleSpan(trace: ComputedTrace, time: number): Span {
  const { entity, start } = trace.placed;
  const at = entity.table?.columns.findIndex(({ name }) => name === "time") ?? -1;
  const factor = entity.table?.columns[at]?.unit?.factor;
  const row = entity.table?.rows.find(
    ({ values, void: reason }) =>
      reason === undefined &&
      factor !== undefined &&
      Math.abs((values[at] ?? Number.NaN) * factor - time) < 1e-9,
  );
  return row === undefined ? headingSpan(trace) : shifted(rowSpan(row), start);
}

/** The readings of the run at the trace's lift, as other places of a finding; only those of the same file. */
export function readingsAt(trace: ComputedTrace): readonly Span[] {
  const { placed, run } = trace;
  if (run.path !== placed.path) return [];
  return rowsAtLift(trace.result.setup, placed.entity.lift?.value).map((row) =>
    shifted(rowSpan(row), run.start),
  );
}
