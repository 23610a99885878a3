// Computes the runs of a file: rows, branches, averaged stations, their uncertainties, and where flow falls back.
import type { Draft, Port } from "../model/model.ts";
import type { Impossible, Repeatability, RowResult, RunResult, Station } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { branches } from "./branches.ts";
import { columnValues, columnWords } from "./column-values.ts";
import { fallBacks } from "./fall-back.ts";
import { type ChainInput, type FlowChain, flowChain, leakNumber } from "./flow-chain.ts";
import { findMeter } from "./meters/index.ts";
import { effectiveArea } from "./nozzle-flow.ts";
import { portArea } from "./port-areas.ts";
import { repeatabilityOf } from "./repeatability.ts";
import { contribution, digitUncertainty } from "./sensitivity.ts";
import { expanded, type StationRow, type StationTerms, stationsOf } from "./stations.ts";
import { testPressures } from "./test-pressures.ts";
import { unitSlips } from "./unit-slip.ts";

type Rows = readonly Draft<RowResult>[];

/** A run on its way: its rows computed, but not yet judged against the bench's repeatability. */
interface Computed {
  readonly setup: Setup;
  readonly rows: Rows;
  /** Relative variance of each row's corrected flow from its written numbers and the air. */
  readonly variances: readonly number[];
}

/** The results of the runs of one file, in order. Runs on one bench share the repeatability pooled from all of them. */
export function evaluateRuns(setups: readonly Setup[]): RunResult[] {
  const computed = setups.map(computeRows);
  const cells = new Map<string, (readonly number[])[]>();
  for (const { setup, rows } of computed) {
    if (setup.bench === undefined || setup.bench.repeat !== undefined) continue;
    const known = cells.get(setup.bench.id) ?? [];
    cells.set(setup.bench.id, [...known, ...repeatedCells(rows)]);
  }
  return computed.map((run) => {
    const { bench } = run.setup;
    return judge(run, repeatabilityOf(bench, cells.get(bench?.id ?? "") ?? []));
  });
}

function computeRows(setup: Setup): Computed {
  const table = setup.run.table;
  const rows = table?.rows ?? [];
  const lifts = columnValues(table, "lift");
  const depressions = columnValues(table, "depression");
  const meter = setup.bench?.shows && findMeter(setup.bench.shows.kind);
  const displays = meter && columnValues(table, meter.column);
  const ranges = columnWords(table, "range");
  const chain = flowChain(setup);
  const leak = leakNumber(setup);
  const air = setup.air.value;
  const variances: number[] = [];

  const results = rows.map((row): Draft<RowResult> => {
    const lift = lifts?.value(row);
    const depression = depressions?.value(row);
    const display = displays?.value(row);
    const result: Draft<RowResult> = { row };
    if (lift !== undefined) result.lift = lift;
    if (depression !== undefined) result.depression = depression;
    let variance = 0;
    if (chain !== undefined && depression !== undefined && display !== undefined) {
      const input = { display, depression, range: ranges?.(row), leak, density: air.density };
      const flow = chain(input);
      if (flow !== undefined) {
        result.flow = flow;
        result.massFlow = air.density * flow.port;
        const { p0, rho0, ratio } = testPressures(setup.direction.value, air, depression);
        const area = effectiveArea(result.massFlow, p0, rho0, ratio);
        if (area !== undefined) result.effectiveArea = area;
        const steps = { display: displays?.step(row) ?? 0, depression: depressions?.step(row) ?? 0 };
        variance = writtenVariance(chain, input, flow.corrected, steps, setup);
      }
    }
    variances.push(variance);
    return result;
  });
  markSlips(results);
  markBranches(results);
  return { setup, rows: results, variances };
}

/**
 * Relative variance of corrected flow from the written numbers and the air: for each the partial derivative of the whole
 * chain times its standard uncertainty (JCGM 100:2008, 5.1.2).
 */
function writtenVariance(
  chain: FlowChain,
  input: ChainInput,
  corrected: number,
  steps: { readonly display: number; readonly depression: number },
  setup: Setup,
): number {
  if (corrected === 0) return 0;
  const of = (name: "display" | "depression" | "leak" | "density", u: number) =>
    contribution((x) => chain({ ...input, [name]: x })?.corrected, input[name], u);
  const stated = setup.leak?.value;
  const leakStep = stated === undefined || stated === "none" ? 0 : stated.flow.step;
  const airMatters = setup.reference !== undefined || setup.benchAir !== undefined;
  const sum =
    of("display", digitUncertainty(steps.display)) ** 2 +
    of("depression", digitUncertainty(steps.depression)) ** 2 +
    of("leak", digitUncertainty(leakStep)) ** 2 +
    (airMatters ? of("density", setup.air.value.densityUncertainty) ** 2 : 0);
  return sum / corrected ** 2;
}

function markSlips(rows: Rows): void {
  const judged = rows.filter(
    ({ row, lift, flow }) => row.void === undefined && lift !== undefined && flow !== undefined,
  );
  const points = judged.map(({ lift = 0, flow }) => ({ lift, flow: flow?.corrected ?? 0 }));
  for (const [index, slip] of unitSlips(points)) {
    const row = judged[index];
    if (row !== undefined) row.slip = slip;
  }
}

function markBranches(rows: Rows): void {
  const lifts = rows.map(({ row, lift, slip }) =>
    row.void === undefined && slip?.column !== "lift" ? lift : undefined,
  );
  branches(lifts).forEach((branch, index) => {
    const row = rows[index];
    if (row !== undefined && branch !== undefined) row.branch = branch;
  });
}

/** Corrected flows of rows that were taken more than once, by lift and branch. */
function repeatedCells(rows: Rows): (readonly number[])[] {
  const cells = new Map<string, number[]>();
  for (const row of rows) {
    if (!isUsable(row) || row.flow === undefined) continue;
    const key = `${row.branch} ${row.lift}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [row.flow.corrected]);
    else cell.push(row.flow.corrected);
  }
  return [...cells.values()].filter((cell) => cell.length > 1);
}

/** Whether a row may take part in means: not void, complete, and neither a slip nor impossible. */
export function isUsable(row: RowResult): boolean {
  return (
    row.row.void === undefined &&
    row.branch !== undefined &&
    row.flow !== undefined &&
    row.slip === undefined &&
    row.impossible === undefined
  );
}

function judge({ setup, rows, variances }: Computed, repeatability: Repeatability): RunResult {
  const terms: StationTerms = {
    deviation: repeatability.deviation,
    liftSetting: setup.liftSetting.value,
    scale: (setup.bench?.uncertainty?.value ?? 0) / 2,
  };
  let stations = average(rows, variances, terms);
  setUncertainties(rows, variances, stations, terms);
  if (markImpossible(rows, setup.port)) {
    stations = average(rows, variances, terms);
    setUncertainties(rows, variances, stations, terms);
  }
  const { rising, falling } = stations;
  return { setup, rows, rising, falling, repeatability, fallBacks: fallBacks(rising, repeatability) };
}

interface Stations {
  readonly rising: readonly Station[];
  readonly falling: readonly Station[];
}

function average(rows: Rows, variances: readonly number[], terms: StationTerms): Stations {
  const usable: StationRow[] = [];
  rows.forEach((result, index) => {
    if (isUsable(result)) usable.push({ result, variance: variances[index] ?? 0 });
  });
  return { rising: stationsOf("rising", usable, terms), falling: stationsOf("falling", usable, terms) };
}

/** A row by itself: one reading, on the slope of its own branch. */
function setUncertainties(
  rows: Rows,
  variances: readonly number[],
  stations: Stations,
  terms: StationTerms,
): void {
  const slopes = {
    rising: new Map(stations.rising.map((station) => [station.lift, station.slope])),
    falling: new Map(stations.falling.map((station) => [station.lift, station.slope])),
  };
  rows.forEach((row, index) => {
    if (row.flow === undefined) return;
    const slope = row.branch && row.lift !== undefined ? (slopes[row.branch].get(row.lift) ?? 0) : 0;
    row.uncertainty = expanded(row.flow.corrected, slope, variances[index] ?? 0, 1, terms);
  });
}

function markImpossible(rows: Rows, port: Port | undefined): boolean {
  if (port === undefined) return false;
  let any = false;
  for (const row of rows) {
    if (row.row.void !== undefined || row.lift === undefined || row.effectiveArea === undefined) continue;
    const limit = leastArea(port, row.lift);
    if (limit === undefined) continue;
    if (row.effectiveArea * (1 - (row.uncertainty ?? 0)) > limit.geometric) {
      row.impossible = { ...limit, effective: row.effectiveArea };
      any = true;
    }
  }
  return any;
}

/** The gap area, or, where it is not known, the smaller of curtain and throat. */
function leastArea(port: Port, lift: number): Omit<Impossible, "effective"> | undefined {
  const gap = portArea("gap", port, lift);
  if (gap !== undefined) return { area: "gap", geometric: gap };
  const curtain = portArea("curtain", port, lift);
  const throat = portArea("throat", port, lift);
  if (curtain !== undefined && (throat === undefined || curtain <= throat))
    return { area: "curtain", geometric: curtain };
  return throat === undefined ? undefined : { area: "throat", geometric: throat };
}
