// Takes a run's results to what a chart draws of it: points, lines and coefficients in the units of the axes.
import { columnValues } from "../calc/column-values.ts";
import { type PortArea, portArea } from "../calc/port-areas.ts";
import type { Branch, RowResult, RunResult, Station } from "../model/result.ts";
import { decimalsFor, formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { cellIn } from "./cell-in.ts";
import { cleanText } from "./chart-text.ts";
import { extremes } from "./extremes.ts";
import { type WantedUnits, wantedUnit } from "./wanted-units.ts";

/** A run in a chart. `findings` are the codes that flag a row; `label` names the run at its line's end. */
export interface ChartRun {
  readonly result: RunResult;
  readonly label: string;
  readonly role: "main" | "baseline" | "compared";
  readonly findings: ReadonlyMap<RowResult, readonly string[]>;
}

/** What the axes show: lift in a unit or over the valve's diameter, flow and time in a unit. */
export interface ChartAxes {
  readonly lift: Unit;
  readonly ratio: boolean;
  readonly flow: Unit;
  readonly time: Unit;
  /** What was asked for instead of the record's own units. */
  readonly wanted: WantedUnits;
}

const EVERYWHERE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
/** More points of a kind than this lie on each other at any width. */
const MOST_DRAWN = 1000;
/** Findings that a shaded fall-back says already. */
const SHADED: readonly string[] = ["fall-back", "fall-back-not-resolved"];

/** What is said at a reading that does not count. */
export const VOID = "void";

export interface RunPoint {
  readonly x: number;
  readonly y: number;
  /** Ends of the bar: the row's own U (k = 2) to either side; missing where it has none. */
  readonly bar?: readonly [low: number, high: number];
  /** Line of the row, counted from the first line of its run's block. */
  readonly line: number;
  readonly void: boolean;
  /** Whether it took part in means; what did not has no say in how far the axes reach. */
  readonly usable: boolean;
  readonly flags: readonly string[];
  /** Missing for rows that are void or without a branch. */
  readonly branch?: Branch;
  /** The point in words. */
  readonly about: string;
}

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** Where a line is cut at the end of a stretch; no reading stands there. */
  readonly isEdge?: true;
}

export interface ReadPoint extends LinePoint {
  /** Lines of the rows that it stands for, counted from the first line of the run's block. */
  readonly lines: readonly number[];
}

export interface RunLine {
  readonly branch: Branch;
  readonly points: readonly ReadPoint[];
}

/** A run in the units of the axes. */
export interface DrawnRun {
  readonly run: ChartRun;
  /** How many points are left out of a crowd, since others beside them stand out more. */
  readonly crowded: number;
  /** How many readings say the same, by their words: of a crowd more than are drawn. */
  readonly alike: ReadonlyMap<string, number>;
  readonly points: readonly RunPoint[];
  readonly lines: readonly RunLine[];
  readonly coefficients: readonly RunLine[];
  readonly settles: readonly ReadPoint[];
}

/** A lift in m on the chart's axis; `undefined` where L/D is asked for and the port states no valve. */
export function onLiftAxis(result: RunResult, axes: ChartAxes, lift: number): number | undefined {
  if (!axes.ratio) return finite(fromSI(lift, axes.lift));
  const valve = result.setup.port?.valve?.value;
  return valve === undefined || !(valve > 0) ? undefined : finite(lift / valve);
}

/**
 * Everything of a run that can be drawn; rows without lift or flow have no point. Where its fall-backs are shaded, the
 * findings that say the same flag no point. Points of a stretch of the axis alone, where that is given.
 */
export function drawnRun(
  run: ChartRun,
  axes: ChartAxes,
  area: PortArea["name"],
  isShaded: boolean,
  [low, high]: readonly [low: number, high: number] = EVERYWHERE,
): DrawnRun {
  const { result } = run;
  /** What stands out is looked for in the stretch that is shown, and on either side of it. */
  const thinned = <P extends LinePoint>(points: readonly P[]): readonly P[] => {
    const sides = Map.groupBy(points, ({ x }) => (x < low ? "below" : x > high ? "above" : "inside"));
    return [...sides.values()].flatMap((side) => standingOut(side, ({ y }) => y));
  };
  const line = (branch: Branch, value: (station: Station) => number | undefined): RunLine[] => {
    const points = result[branch].flatMap((station) => {
      const x = onLiftAxis(result, axes, station.lift);
      const y = finite(value(station));
      return x === undefined || y === undefined ? [] : [{ x, y, lines: linesOf(station) }];
    });
    return points.length === 0 ? [] : [{ branch, points: thinned(points) }];
  };
  const flow = (station: Station) => fromSI(station.flow, axes.flow);
  const coefficient = (station: Station) => coefficientOf(result, area, station);
  const usable = result.rows.filter((row) => {
    const x = row.lift === undefined ? undefined : onLiftAxis(result, axes, row.lift);
    return x !== undefined && x >= low && x <= high && Number.isFinite(row.flow?.corrected);
  });
  const rows = drawnRows(run, usable);
  const alike = new Map<string, number>();
  for (const row of usable) {
    const words = row.row.void === undefined ? wordsAlike(flagsOf(run, row, isShaded)) : VOID;
    alike.set(words, (alike.get(words) ?? 0) + 1);
  }
  return {
    run,
    crowded: usable.length - rows.length,
    alike,
    points: rows.flatMap((row) => pointOf(run, axes, row, isShaded) ?? []),
    lines: [...line("rising", flow), ...line("falling", flow)],
    coefficients: [...line("rising", coefficient), ...line("falling", coefficient)],
    settles: thinned(settlesOf(result, axes)),
  };
}

/** The rows to draw, chosen before anything is worked out for them: of many, those that stand out in their lift. */
function drawnRows({ findings }: ChartRun, rows: readonly RowResult[]): readonly RowResult[] {
  if (rows.length <= MOST_DRAWN) return rows;
  const byLift = [...rows].sort((a, b) => (a.lift ?? 0) - (b.lift ?? 0));
  const kinds = Map.groupBy(byLift, (row) =>
    row.row.void === undefined ? findings.has(row) || !row.isUsable : "void",
  );
  return [...kinds.values()].flatMap((kind) => standingOut(kind, ({ flow }) => flow?.corrected ?? 0));
}

/** All of them where they are few, else of each stretch the ends, the lowest and the highest. */
function standingOut<T>(all: readonly T[], value: (each: T) => number): readonly T[] {
  if (all.length <= MOST_DRAWN) return all;
  const values = Float64Array.from(all, value);
  return extremes(values, 0, values.length, MOST_DRAWN / 4).flatMap((at) => all[at] ?? []);
}

/** Whether something is said against a point that still counts as read. */
export function isFlagged(point: RunPoint): boolean {
  return !point.void && (point.flags.length > 0 || !point.usable);
}

/** What is said against a row by a label of its own. */
function flagsOf(run: ChartRun, row: RowResult, isShaded: boolean): readonly string[] {
  const codes = row.row.void === undefined ? run.findings.get(row) : undefined;
  return codes?.filter((code) => !isShaded || !SHADED.includes(code)) ?? [];
}

/** What readings that say the same have in common. */
export function wordsAlike(flags: readonly string[]): string {
  return flags.join(", ");
}

function pointOf(run: ChartRun, axes: ChartAxes, row: RowResult, isShaded: boolean): RunPoint | undefined {
  const x = row.lift === undefined ? undefined : onLiftAxis(run.result, axes, row.lift);
  const y = row.flow && finite(fromSI(row.flow.corrected, axes.flow));
  if (x === undefined || y === undefined) return undefined;
  const reach = row.uncertainty === undefined ? undefined : finite(Math.abs(y) * row.uncertainty);
  const isVoid = row.row.void !== undefined;
  return {
    x,
    y,
    ...(reach !== undefined && { bar: [y - reach, y + reach] as const }),
    line: row.row.line,
    void: isVoid,
    usable: row.isUsable,
    flags: flagsOf(run, row, isShaded),
    ...(row.branch !== undefined && { branch: row.branch }),
    about: about(run, axes, row, y, reach, isVoid ? [VOID] : (run.findings.get(row) ?? [])),
  };
}

function about(
  run: ChartRun,
  axes: ChartAxes,
  row: RowResult,
  flow: number,
  reach: number | undefined,
  words: readonly string[],
): string {
  const decimals = (reach === undefined ? undefined : decimalsFor(reach)) ?? 1;
  const spread = reach === undefined ? "" : ` ± ${formatFixed(reach, decimals)}`;
  const { table } = run.result.setup.run;
  const unit =
    wantedUnit(axes.wanted, "length") ?? table?.columns.find((column) => column.name === "lift")?.unit;
  const lift = unit === undefined ? "" : `${cellIn(table, "lift", row.row, unit) ?? ""} ${unit.symbol}`;
  const tail = words.length === 0 ? "" : `, ${words.join(", ")}`;
  return cleanText(
    `${run.label}, lift ${lift}: ${formatFixed(flow, decimals)}${spread} ${axes.flow.symbol}${tail}`,
  );
}

/** Mean effective area of the station's rows over the area at its lift. */
function coefficientOf(result: RunResult, name: PortArea["name"], station: Station): number | undefined {
  const area = result.setup.port && portArea(name, result.setup.port, station.lift);
  const effective = station.rows.flatMap((row) => row.effectiveArea ?? []);
  if (area === undefined || effective.length === 0) return undefined;
  return effective.reduce((sum, value) => sum + value, 0) / effective.length / area;
}

function settlesOf(result: RunResult, axes: ChartAxes): ReadPoint[] {
  const settle = columnValues(result.setup.run.table, "settle");
  return result.rows.flatMap(({ row, lift }) => {
    const x = lift === undefined ? undefined : onLiftAxis(result, axes, lift);
    const time = settle?.value(row);
    const y = time === undefined ? undefined : finite(fromSI(time, axes.time));
    return row.void !== undefined || x === undefined || y === undefined ? [] : [{ x, y, lines: [row.line] }];
  });
}

/** Lines of the rows that a station is the mean of. */
export function linesOf({ rows }: Station): readonly number[] {
  return rows.map(({ row }) => row.line);
}

function finite(value: number | undefined): number | undefined {
  return value !== undefined && Number.isFinite(value) ? value : undefined;
}
