// The samples of a trace as a table, with what happened at which.
import type { TraceResult } from "../model/trace-result.ts";
import { fromSI } from "../quantity/unit.ts";
import { extremes } from "./extremes.ts";
import { evenly, NOTHING, type NumbersTable, numbers } from "./numbers-table.ts";
import { shownNumber } from "./shown-number.ts";
import { titleOf } from "./table-blocks.ts";
import { stepLabel } from "./trace-facts.ts";
import { sampleLines } from "./trace-samples.ts";
import { traceUnits } from "./trace-units.ts";
import type { WantedUnits } from "./wanted-units.ts";

/** Of more samples than `most` those where something happens, and those that stand out in their depression. */
export function traceTable(
  result: TraceResult,
  wanted: WantedUnits = [],
  most = Number.POSITIVE_INFINITY,
): NumbersTable {
  const { trace, setup, samples, flow, areaFactor } = result;
  const units = traceUnits(result, wanted);
  const lineOf = sampleLines(result);
  const events = eventsOf(result);
  const kept = keptSamples(samples.depression, events, most);
  const times = kept.map((at) => samples.time[at] ?? Number.NaN);
  const shown = (value: number) => (Number.isFinite(value) ? shownNumber(value, undefined) : NOTHING);
  const flows = kept.map((at) => flow?.[at] ?? Number.NaN);
  return {
    title: titleOf("trace", trace.lift, setup.run.id),
    head: flow === undefined ? "" : "corrected flow, and the area that it makes at each moment's depression",
    columns: [
      numbers("time", units.time.symbol, evenly(times.map((time) => fromSI(time, units.time)))),
      numbers(
        "depression",
        units.depression.symbol,
        evenly(kept.map((at) => fromSI(samples.depression[at] ?? Number.NaN, units.depression))),
      ),
      ...(flow === undefined
        ? []
        : [
            numbers(
              "corrected flow",
              units.flow.symbol,
              flows.map((value) => shown(fromSI(value, units.flow))),
            ),
            numbers(
              "apparent area",
              units.area.symbol,
              flows.map((value) => shown(fromSI(value * areaFactor, units.area))),
            ),
          ]),
      {
        title: "what happens",
        unit: "",
        isNumber: false,
        cells: kept.map((at) => events.get(at) ?? ""),
      },
    ],
    lines: times.map((time) => lineOf.get(time)),
    more: samples.time.length - kept.length,
  };
}

function keptSamples(
  values: Float64Array,
  events: ReadonlyMap<number, string>,
  most: number,
): readonly number[] {
  if (values.length <= most) return Array.from(values, (_, at) => at);
  const buckets = Math.max(1, Math.floor((most - events.size) / 4));
  const kept = new Set([...extremes(values, 0, values.length, buckets), ...events.keys()]);
  return [...kept].sort((a, b) => a - b);
}

/** What the trace tells, by the first sample at or after its time. */
export function eventsOf({ samples, settling, steady, steps }: TraceResult): ReadonlyMap<number, string> {
  const events = new Map<number, string>();
  const put = (time: number, words: string): void => {
    const at = samples.time.findIndex((each) => each >= time);
    if (at >= 0) events.set(at, [events.get(at), words].filter((part) => part !== undefined).join(", "));
  };
  if (settling !== undefined) put(settling.time, "settled");
  if (steady !== undefined) {
    put(steady.from, "steady from here");
    put(steady.to, "steady up to here");
  }
  for (const step of steps) put(step.time, stepLabel(step));
  return events;
}
