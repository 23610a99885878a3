// A display that shows a voltage, a current or a frequency, with a calibration table.
import type { Bench, Table } from "../../model/model.ts";
import { toSI } from "../../quantity/unit.ts";
import type { Meter, ReadDisplay } from "./meter.ts";

export interface CalibrationPoint {
  readonly signal: number;
  readonly flow: number;
}

/** The points of a bench's calibration table in SI, by rising signal; void and incomplete rows are left out. */
export function calibrationPoints(table: Table | undefined): readonly CalibrationPoint[] {
  const signalAt = table?.columns.findIndex((column) => column.name === "signal") ?? -1;
  const flowAt = table?.columns.findIndex((column) => column.name === "flow") ?? -1;
  const signalUnit = table?.columns[signalAt]?.unit;
  const flowUnit = table?.columns[flowAt]?.unit;
  if (table === undefined || signalUnit === undefined || flowUnit === undefined) return [];
  const points = table.rows.flatMap((row) => {
    const signal = toSI(row.values[signalAt] ?? Number.NaN, signalUnit);
    const flow = toSI(row.values[flowAt] ?? Number.NaN, flowUnit);
    return row.void === undefined && Number.isFinite(signal) && Number.isFinite(flow)
      ? [{ signal, flow }]
      : [];
  });
  return points.sort((a, b) => a.signal - b.signal);
}

/** Straight lines between the points of the table, and nothing outside them. */
function reader(bench: Bench): ReadDisplay {
  const points = calibrationPoints(bench.table);
  return (signal) => interpolate(points, signal);
}

function interpolate(points: readonly CalibrationPoint[], signal: number): number | undefined {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined || !(signal >= first.signal && signal <= last.signal)) {
    return undefined;
  }
  let low = 0;
  let high = points.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((points[middle]?.signal ?? 0) <= signal) low = middle;
    else high = middle;
  }
  const below = points[low] ?? first;
  const above = points[high] ?? last;
  if (above.signal === below.signal) return below.flow;
  return below.flow + ((above.flow - below.flow) * (signal - below.signal)) / (above.signal - below.signal);
}

export const signal: Meter = {
  shows: "signal",
  column: "signal",
  reader,
  // A leak is written as a flow of the room's air: it may lie below the table's first point.
  leakReader: () => (leak) => leak,
};
