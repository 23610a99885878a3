// One run as heads, cells and sentences, before anything is said about how they are set on a page.
import { type NamedValue, pointValues } from "../calc/points/point-values.ts";
import { summary } from "../calc/summary.ts";
import type { RowResult, RunResult, Station } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { cellIn } from "./cell-in.ts";
import { type DisplayUnits, displayUnits } from "./display-units.ts";
import { eventWords } from "./event-words.ts";
import { resultUnit } from "./result-unit.ts";
import { correctedFlowHead, type Fact, runFacts } from "./run-facts.ts";
import { runName } from "./run-name.ts";
import { shownDecimals, shownNumber, shownRatio, shownUncertainty } from "./shown-number.ts";
import { overLift } from "./station-words.ts";
import type { TableInput } from "./table-input.ts";

/** What stands in a cell without a value. */
const NOTHING = "-";

/** A column; its cells are texts, numbers among them with their digits chosen. */
export interface TableColumn {
  readonly title: string;
  /** "" where the values have no unit. */
  readonly unit: string;
  readonly isNumber: boolean;
  readonly cells: readonly string[];
}

/** All that a reader is shown of a run. Texts of the record stand in it as written. */
export interface RunTable {
  readonly id: string;
  readonly title: string | undefined;
  readonly facts: readonly Fact[];
  /** At which depression and in which air the corrected flow is, and what stands beside it. */
  readonly head: string;
  readonly columns: readonly TableColumn[];
  /** The averaged stations that more than one reading made; empty where there are none. */
  readonly averages: readonly TableColumn[];
  readonly summary: readonly string[];
}

/** The table of a run, of at most so many rows. Columns without any value are left out, but for lift and depression. */
export function runTable(
  run: RunResult,
  { findingsOf, portWords, wanted }: Pick<TableInput, "findingsOf" | "portWords" | "wanted">,
  most = Number.POSITIVE_INFINITY,
): RunTable {
  const { setup } = run;
  const rows = run.rows.slice(0, most);
  const read: ReadRows = { setup, rows };
  const units = displayUnits(setup, wanted);
  const columns = [
    writtenColumn(read, "lift", units.lift),
    writtenColumn(read, "depression", units.depression),
    ...calculatedColumns(read, units).filter(hasValues),
    ...[writtenColumn(read, "settle", units.time)].filter(hasValues),
    ...[remarkColumn(rows, (row) => findingsOf(run, row))].filter(hasValues),
  ];
  return {
    id: runName(setup.run),
    title: setup.run.title,
    facts: runFacts(run, wanted),
    head: `${correctedFlowHead(setup, wanted)}; ±U: expanded uncertainty of one reading (k = 2)`,
    columns: rows.length === 0 ? [] : columns,
    averages: averageColumns(run, units, most),
    summary:
      rows.length === 0
        ? ["no readings"]
        : [...summaryWords(run, units), ...quoted(portWords?.(run) ?? [], setup, units)],
  };
}

/** What was found, and that its numbers are in other units than the table's: findings are worded when they are made. */
function quoted(
  words: readonly string[],
  setup: Setup,
  { lift, depression, flow }: DisplayUnits,
): readonly string[] {
  const own = displayUnits(setup);
  const isAlike = lift === own.lift && depression === own.depression && flow === own.flow;
  return words.length === 0 || isAlike ? words : ["findings speak in the record's own units:", ...words];
}

/** The rows that a table has. */
type ReadRows = Pick<RunResult, "setup" | "rows">;

function hasValues({ cells }: TableColumn): boolean {
  return cells.some((cell) => cell !== NOTHING && cell !== "");
}

/** The cells of a column of the record, with the digits as written where they are in the unit that is shown. */
function writtenColumn({ setup, rows }: ReadRows, name: string, unit: Unit): TableColumn {
  const cells = rows.map(({ row }) => cellIn(setup.run.table, name, row, unit) ?? NOTHING);
  return { title: name, unit: unit.symbol, isNumber: true, cells };
}

function calculatedColumns({ setup, rows }: ReadRows, units: DisplayUnits): readonly TableColumn[] {
  const [first] = rows;
  const heads = first === undefined ? [] : pointValues({ result: first, setup });
  const columns = heads.map(({ title, dimension, inTable }) => {
    const unit = dimension === "none" ? undefined : resultUnit(units, dimension);
    return { title, unit, inTable, cells: [] as string[] };
  });
  // Row by row: what a row's numbers are made of need not be kept for the others.
  for (const result of rows) {
    for (const [index, value] of pointValues({ result, setup }).entries()) {
      const { inTable = false, unit, cells } = columns[index] ?? {};
      if (inTable) cells?.push(cellOf(value, unit, result));
    }
  }
  return columns
    .filter(({ inTable }) => inTable)
    .map(({ title, unit, cells }) => ({ title, unit: unit?.symbol ?? "", isNumber: true, cells }));
}

/** What is computed from a flow deserves the digits of that flow's own uncertainty. */
function cellOf(named: NamedValue | undefined, unit: Unit | undefined, { uncertainty }: RowResult): string {
  if (named?.value === undefined) return NOTHING;
  if (unit === undefined) return shownRatio(named.value);
  const value = fromSI(named.value, unit);
  return named.path[0] === "uncertainty" ? shownUncertainty(value) : shownNumber(value, uncertainty);
}

function remarkColumn(
  rows: readonly RowResult[],
  codesOf: (row: RowResult) => readonly string[],
): TableColumn {
  const cells = rows.map((result) => {
    const { row } = result;
    const isVoid = row.void === undefined ? [] : [row.void === "" ? "void" : `void: ${row.void}`];
    return [...codesOf(result), ...isVoid, ...(row.remark === undefined ? [] : [row.remark])].join(", ");
  });
  return { title: "remarks", unit: "", isNumber: false, cells };
}

function averageColumns(run: RunResult, units: DisplayUnits, most: number): readonly TableColumn[] {
  const stations = [
    ...run.rising.map((station) => ({ station, branch: "rising" })),
    ...run.falling.map((station) => ({ station, branch: "falling" })),
  ]
    .filter(({ station }) => station.rows.length > 1)
    .slice(0, most);
  if (stations.length === 0) return [];
  const column = (
    title: string,
    unit: string,
    cell: (entry: (typeof stations)[number]) => string,
    isNumber = true,
  ) => ({ title, unit, isNumber, cells: stations.map(cell) });
  const flowIn = ({ flow }: Station) => fromSI(flow, units.flow);
  return [
    column("lift", units.lift.symbol, ({ station }) => liftWords(run, station, units)),
    column("branch", "", ({ branch }) => branch, false),
    column("readings", "", ({ station }) => String(station.rows.length)),
    column("mean flow", units.flow.symbol, ({ station }) =>
      shownNumber(flowIn(station), station.uncertainty),
    ),
    column("±U", units.flow.symbol, ({ station }) =>
      shownUncertainty(Math.abs(flowIn(station)) * station.uncertainty),
    ),
  ];
}

/** The lift of a station as its first row writes it. */
function liftWords({ setup }: RunResult, { lift, rows }: Station, units: DisplayUnits): string {
  const [first] = rows;
  const cell = first && cellIn(setup.run.table, "lift", first.row, units.lift);
  return cell ?? shownNumber(fromSI(lift, units.lift), undefined);
}

/** All flows of the summary with the decimals that the peak deserves. */
function summaryWords(run: RunResult, units: DisplayUnits): readonly string[] {
  const { peak: best, mean, bands, event, time } = summary(run);
  const peak = run.rising.find(({ lift }) => lift === best?.lift);
  const decimals = peak === undefined ? 0 : shownDecimals(fromSI(peak.flow, units.flow), peak.uncertainty);
  const number = (value: number) => formatFixed(fromSI(value, units.flow), decimals);
  const flow = (value: number) => `${number(value)} ${units.flow.symbol}`;
  const thirds =
    bands === undefined
      ? ""
      : ` (its thirds: ${number(bands.low)}, ${number(bands.middle)}, ${flow(bands.high)})`;
  return [
    ...(peak === undefined
      ? []
      : [`peak ${flow(peak.flow)} at ${liftWords(run, peak, units)} ${units.lift.symbol}`]),
    ...(mean === undefined ? [] : [`mean ${flow(mean.flow)} ${overLift(mean, units.lift)}${thirds}`]),
    ...(event === undefined ? [] : [eventWords(event, `cam ${run.setup.cam?.id}`, units.lift, flow)]),
    ...(time === undefined
      ? []
      : [`time taken ${Number(fromSI(time, units.time).toPrecision(4))} ${units.time.symbol}`]),
  ];
}
