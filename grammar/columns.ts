// The list of columns that a table may have: one row each, and everything that knows a column reads it here.
import type { BlockKind } from "../shared/model/model.ts";
import type { Dimension } from "../shared/quantity/dimension.ts";

/** One column of a table. Without `dimensions` its cells are choices and it carries no unit. */
export interface ColumnKind {
  readonly name: string;
  readonly dimensions: readonly Dimension[];
  /** The blocks whose table may have it. */
  readonly within: readonly BlockKind[];
  readonly doc: string;
  /** How a head and a cell look. */
  readonly example: readonly [head: string, cell: string];
}

const READINGS: readonly BlockKind[] = ["run", "ladder", "plate-check"];

export const COLUMNS: readonly ColumnKind[] = [
  {
    name: "lift",
    dimensions: ["length"],
    within: ["run", "cam"],
    doc: "Valve lift of the point; in a cam, the lift at the angle.",
    example: ["lift[in]", "0.300"],
  },
  {
    name: "depression",
    dimensions: ["pressure"],
    within: [...READINGS, "trace"],
    doc: "Pressure difference held across the test piece.",
    example: ["depression[inH2O]", "28.0"],
  },
  {
    name: "flow",
    dimensions: ["flow"],
    within: [...READINGS, "trace", "bench"],
    doc: "Flow as the bench's display shows it; in a bench's calibration table, the flow of a signal.",
    example: ["flow[cfm]", "187.4"],
  },
  {
    name: "reading",
    dimensions: ["ratio"],
    within: [...READINGS, "trace"],
    doc: "Share of the range's flow, on a bench that shows percent.",
    example: ["reading[%]", "72.5"],
  },
  {
    name: "range",
    dimensions: [],
    within: READINGS,
    doc: "Name of the bench's range that the reading was taken on.",
    example: ["range", "high"],
  },
  {
    name: "drop",
    dimensions: ["pressure"],
    within: [...READINGS, "trace"],
    doc: "Pressure drop over the metering element, on a bench that shows drop.",
    example: ["drop[inH2O]", "6.35"],
  },
  {
    name: "signal",
    dimensions: ["signal"],
    within: [...READINGS, "trace", "bench"],
    doc: "Output of the meter, on a bench that shows a signal.",
    example: ["signal[V]", "3.412"],
  },
  {
    name: "settle",
    dimensions: ["time"],
    within: READINGS,
    doc: "Time from opening the valve to holding the target.",
    example: ["settle[s]", "1.6"],
  },
  {
    name: "read",
    dimensions: ["time"],
    within: READINGS,
    doc: "Time from opening the valve to taking the reading.",
    example: ["read[s]", "4.0"],
  },
  {
    name: "temperature",
    dimensions: ["temperature"],
    within: READINGS,
    doc: "Temperature of the air at the meter.",
    example: ["temperature[degF]", "78.5"],
  },
  {
    name: "duty",
    dimensions: ["ratio"],
    within: READINGS,
    doc: "Motor output at which the depression was held.",
    example: ["duty[%]", "64"],
  },
  {
    name: "torque",
    dimensions: ["torque"],
    within: READINGS,
    doc: "Torque on an impulse swirl meter.",
    example: ["torque[mN.m]", "8.2"],
  },
  {
    name: "paddle",
    dimensions: ["rotation"],
    within: READINGS,
    doc: "Speed of a paddle swirl meter.",
    example: ["paddle[rpm]", "1150"],
  },
  {
    name: "pitot",
    dimensions: ["pressure"],
    within: [...READINGS, "map"],
    doc: "Dynamic pressure of a probe in the port.",
    example: ["pitot[inH2O]", "11.4"],
  },
  {
    name: "velocity",
    dimensions: ["speed"],
    within: [...READINGS, "map"],
    doc: "Local air speed at a probe in the port.",
    example: ["velocity[ft/s]", "245"],
  },
  {
    name: "time",
    dimensions: ["time"],
    within: ["trace"],
    doc: "Time since the valve was opened.",
    example: ["time[s]", "0.40"],
  },
  {
    name: "x",
    dimensions: ["length"],
    within: ["map"],
    doc: "Place of the probe across the section.",
    example: ["x[mm]", "12.0"],
  },
  {
    name: "y",
    dimensions: ["length"],
    within: ["map"],
    doc: "Place of the probe along the section's height.",
    example: ["y[mm]", "8.0"],
  },
  {
    name: "angle",
    dimensions: ["angle"],
    within: ["cam"],
    doc: "Crank angle from the start of the event.",
    example: ["angle[deg]", "60"],
  },
];

const byName: ReadonlyMap<string, ColumnKind> = new Map(COLUMNS.map((column) => [column.name, column]));

/** The column of that name. */
export function findColumn(name: string): ColumnKind | undefined {
  return byName.get(name);
}

/** Whether some table has a column of that name. */
export function isColumnName(name: string): boolean {
  return byName.has(name);
}

/** The columns that a block's table may have. */
export function columnsWithin(block: BlockKind): readonly ColumnKind[] {
  return COLUMNS.filter((column) => column.within.includes(block));
}
