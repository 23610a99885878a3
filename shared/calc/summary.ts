// One run in a handful of numbers: its peak, its means over lift and over the cam event, and the time it took.
import type { RunResult, Station, Summary } from "../model/result.ts";
import { meanOverEvent } from "./cam-event.ts";
import type { CurvePoint } from "./cam-law.ts";
import { columnValues } from "./column-values.ts";

/** The summary of a run on its averaged rising stations. */
export function summary(result: RunResult): Summary {
  const { rising, setup } = result;
  const first = rising[0];
  const last = rising.at(-1);
  const time = timeTaken(result);
  if (first === undefined || last === undefined) return time === undefined ? {} : { time };
  const curve = rising.map(({ lift, flow }) => ({ lift, value: flow }));
  const peak = rising.reduce((best, station) => (station.flow > best.flow ? station : best));
  const mean = meanOver(curve, first.lift, last.lift);
  const third = (last.lift - first.lift) / 3;
  const bands = [0, 1, 2].map((part) =>
    meanOver(curve, first.lift + part * third, part === 2 ? last.lift : first.lift + (part + 1) * third),
  );
  const [low, middle, high] = bands;
  const event = meanOverEvent(setup, rising);
  return {
    peak: { lift: peak.lift, flow: peak.flow },
    ...(mean !== undefined && { mean: { flow: mean, from: first.lift, to: last.lift } }),
    ...(low !== undefined && middle !== undefined && high !== undefined && { bands: { low, middle, high } }),
    ...(event !== undefined && { event }),
    ...(time !== undefined && { time }),
  };
}

/** Mean of the straight lines between stations over a stretch of lift inside their range; `undefined` over none. */
export function meanOver(curve: readonly CurvePoint[], from: number, to: number): number | undefined {
  if (!(to > from)) return undefined;
  const inner = curve.filter((point) => point.lift > from && point.lift < to);
  const points = [pointAt(curve, from), ...inner, pointAt(curve, to)];
  let area = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined) return undefined;
    area += ((a.value + b.value) / 2) * (b.lift - a.lift);
  }
  return area / (to - from);
}

/** Flow at a lift on the straight lines between stations; `undefined` outside them. */
export function flowAt(stations: readonly Station[], lift: number): number | undefined {
  return pointAt(
    stations.map((station) => ({ lift: station.lift, value: station.flow })),
    lift,
  )?.value;
}

/** Value at a lift on the straight lines between points of rising lift; `undefined` outside them. */
export function valueAt(curve: readonly CurvePoint[], lift: number): number | undefined {
  return pointAt(curve, lift)?.value;
}

function pointAt(curve: readonly CurvePoint[], lift: number): CurvePoint | undefined {
  let low = 0;
  let above = curve.length;
  while (low < above) {
    const middle = (low + above) >> 1;
    if ((curve[middle]?.lift ?? 0) < lift) low = middle + 1;
    else above = middle;
  }
  const b = curve[above];
  if (b === undefined) return undefined;
  if (b.lift === lift) return b;
  const a = curve[above - 1];
  if (a === undefined) return undefined;
  const share = (lift - a.lift) / (b.lift - a.lift);
  return { lift, value: a.value + share * (b.value - a.value) };
}

/** Over all rows, also void and falling ones: the time to the reading where it was written, else to settling. */
function timeTaken({ rows, setup }: RunResult): number | undefined {
  const read = columnValues(setup.run.table, "read");
  const settle = columnValues(setup.run.table, "settle");
  const times = rows.flatMap(({ row }) => read?.value(row) ?? settle?.value(row) ?? []);
  return times.length === 0 ? undefined : times.reduce((sum, time) => sum + time, 0);
}
