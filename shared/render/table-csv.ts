// Sets the readings of all runs as one CSV table, one reading a line.
import { columnValues } from "../calc/column-values.ts";
import { POINT_CALCULATIONS } from "../calc/points/index.ts";
import type { PointCalculation } from "../calc/points/point-calculation.ts";
import { type NamedValue, pointValues } from "../calc/points/point-values.ts";
import type { RowResult, RunResult } from "../model/result.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { printable } from "../text/printable.ts";
import { type CsvCell, csv } from "./csv.ts";
import { type DisplayUnits, displayUnits, unit } from "./display-units.ts";
import { resultUnit } from "./result-unit.ts";
import { rounded } from "./rounded.ts";
import type { TableInput } from "./table-input.ts";

/** A reading with all that its line is made from. */
interface Reading {
  readonly run: RunResult;
  readonly result: RowResult;
  readonly line: number;
  readonly findings: readonly string[];
  /** By column head without its unit. */
  readonly values: ReadonlyMap<string, NamedValue>;
}

interface Column {
  readonly head: string;
  readonly cell: (reading: Reading) => CsvCell;
}

/**
 * All columns always, so that two files can be put under each other; only the sections of a port come as they are named.
 * One column has one unit: that asked for, else that of the first run. A corrected flow stands beside the depression and the air that it is in.
 */
export function tableCsv({ file, runs, startLine, findingsOf, wanted = [] }: TableInput): string {
  const [first] = runs;
  const readings = runs.flatMap((run) =>
    run.rows.map((result) => ({
      run,
      result,
      line: startLine(run) + result.row.line + 1,
      findings: findingsOf(run, result),
      values: new Map(
        pointValues({ result, setup: run.setup }).map((named) => [named.path.join("."), named] as const),
      ),
    })),
  );
  const units = first === undefined ? metric : displayUnits(first.setup, wanted);
  const columns = [
    ...factColumns(file),
    ...readColumns(units),
    ...computedColumns(readings, units),
    ...lastColumns(units),
  ];
  const head = columns.map((column) => printable(column.head));
  return csv([head, ...readings.map((reading) => columns.map(({ cell }) => clean(cell(reading))))]);
}

/** For a file without runs, whose head line still wants units. */
const metric: DisplayUnits = {
  lift: unit("mm"),
  depression: unit("kPa"),
  flow: unit("L/s"),
  massFlow: unit("g/s"),
  area: unit("mm2"),
  speed: unit("m/s"),
  time: unit("s"),
};

function factColumns(file: string): readonly Column[] {
  return [
    { head: "file", cell: () => file },
    { head: "line", cell: ({ line }) => line },
    { head: "run", cell: ({ run }) => run.setup.run.id },
    { head: "port", cell: ({ run }) => run.setup.port?.id },
    { head: "side", cell: ({ run }) => run.setup.port?.side },
    { head: "cylinder", cell: ({ run }) => run.setup.run.cylinder },
    { head: "stage", cell: ({ run }) => run.setup.run.stage },
    { head: "bench", cell: ({ run }) => run.setup.bench?.id },
    { head: "date", cell: ({ run }) => run.setup.date?.value },
    { head: "direction", cell: ({ run }) => run.setup.direction.value },
  ];
}

function readColumns(units: DisplayUnits): readonly Column[] {
  return [
    { head: "void", cell: ({ result }) => String(result.row.void !== undefined) },
    withUnit("lift", units.lift, ({ result }) => result.lift),
    withUnit("depression", units.depression, ({ result }) => result.depression),
    withUnit("quote", units.depression, ({ run }) => run.setup.quote.value.value),
    { head: "reference", cell: ({ run }) => run.setup.reference?.value.name },
  ];
}

function computedColumns(readings: readonly Reading[], units: DisplayUnits): readonly Column[] {
  return POINT_CALCULATIONS.flatMap((calculation) =>
    headsOf(calculation, readings).map((head) => computedColumn(head, calculation, units)),
  );
}

/** A calculation that gives a record has a column for each name that any reading knows. */
function headsOf({ id, gives }: PointCalculation, readings: readonly Reading[]): readonly string[] {
  if (gives === "value") return [id];
  const heads = readings.flatMap(({ values }) =>
    [...values.keys()].filter((key) => key.startsWith(`${id}.`)),
  );
  return [...new Set(heads)];
}

function computedColumn(head: string, { dimension }: PointCalculation, units: DisplayUnits): Column {
  const valueIn = ({ values }: Reading) => values.get(head)?.value;
  if (dimension !== "none") return withUnit(head, resultUnit(units, dimension), valueIn);
  const cell = (reading: Reading) => {
    const value = valueIn(reading);
    return value === undefined ? undefined : rounded(value);
  };
  return { head, cell };
}

function lastColumns(units: DisplayUnits): readonly Column[] {
  return [
    withUnit("settle", units.time, ({ run, result }) =>
      columnValues(run.setup.run.table, "settle")?.value(result.row),
    ),
    { head: "findings", cell: ({ findings }) => findings.join(" ") },
    { head: "remark", cell: ({ result: { row } }) => [row.void, row.remark].filter(Boolean).join("; ") },
  ];
}

function withUnit(name: string, unit: Unit, si: (reading: Reading) => number | undefined): Column {
  return {
    head: `${name}[${unit.symbol}]`,
    cell: (reading) => {
      const value = si(reading);
      return value === undefined ? undefined : rounded(fromSI(value, unit));
    },
  };
}

function clean(cell: CsvCell): CsvCell {
  return typeof cell === "string" ? printable(cell) : cell;
}
