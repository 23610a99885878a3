// Computes the rows of a run one by one: flow, mass flow, effective area, and what their written digits are worth.
import type { Row } from "../model/model.ts";
import type { RowResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { columnValues, columnWords } from "./column-values.ts";
import { ComputedRow, type Passed } from "./computed-row.ts";
import { type ChainInput, type FlowChain, flowChain, leakNumber } from "./flow-chain.ts";
import { findMeter } from "./meters/index.ts";
import { effectiveArea } from "./nozzle-flow.ts";
import { contribution, digitUncertainty, stepFor } from "./sensitivity.ts";
import { testPressures } from "./test-pressures.ts";

/** Rows on their way: what they say of each other (branch, slips, means) is still to come. */
export type Rows = readonly ComputedRow[];

/** The rows of a run, each by itself. */
export function computeRows(setup: Setup): Rows {
  const table = setup.run.table;
  const lifts = columnValues(table, "lift");
  const depressions = columnValues(table, "depression");
  const meter = setup.bench?.shows && findMeter(setup.bench.shows.kind);
  const displays = meter && columnValues(table, meter.column);
  const ranges = columnWords(table, "range");
  const chain = flowChain(setup);
  const leak = leakNumber(setup);
  const air = setup.air.value;
  const direction = setup.direction.value;

  // One for all rows: each puts its own numbers in.
  const input: ChainInput = { display: 0, depression: 0, leak, density: air.density, range: undefined };
  const putIn = (row: Row): boolean => {
    const depression = depressions?.value(row);
    const display = displays?.value(row);
    if (depression === undefined || display === undefined) return false;
    input.depression = depression;
    input.display = display;
    input.range = ranges?.(row);
    return true;
  };
  const passed = (row: Row): Passed | undefined => {
    const flow = putIn(row) ? chain?.flow(input) : undefined;
    if (flow === undefined) return undefined;
    const massFlow = air.density * flow.port;
    const { p0, rho0, ratio } = testPressures(direction, air, input.depression);
    return { flow, massFlow, effectiveArea: effectiveArea(massFlow, p0, rho0, ratio) };
  };
  const variance = ({ row, flow }: RowResult): number => {
    if (chain === undefined || flow === undefined || !putIn(row)) return 0;
    return writtenVariance(chain, input, flow.corrected, {
      leak: leakStep(setup),
      density: densityUncertainty(setup),
      display: digitUncertainty(displays?.step(row) ?? 0),
      depression: digitUncertainty(depressions?.step(row) ?? 0),
    });
  };
  // A loop, since the engine makes arrays of another kind once it compiles a `map`, and all that has been compiled for the
  // rows of a run by then would be compiled again.
  const rows: ComputedRow[] = [];
  for (const row of table?.rows ?? []) {
    rows.push(new ComputedRow(row, lifts?.value(row), depressions?.value(row), passed(row), variance));
  }
  return rows;
}

/** Standard uncertainties of what a row puts in. */
type Uncertainties = Readonly<Record<(typeof UNCERTAIN)[number], number>>;

const UNCERTAIN = ["display", "depression", "leak", "density"] as const;

/**
 * Relative variance of corrected flow from the written numbers and the air: for each the partial derivative of the whole
 * chain times its standard uncertainty (JCGM 100:2008, 5.1.2).
 */
function writtenVariance(chain: FlowChain, input: ChainInput, corrected: number, u: Uncertainties): number {
  if (corrected === 0) return 0;
  let sum = 0;
  for (const name of UNCERTAIN) {
    const step = stepFor(u[name]);
    if (!(step > 0)) continue;
    const here = input[name];
    input[name] = here + step;
    const above = chain.corrected(input);
    input[name] = here - step;
    const below = chain.corrected(input);
    input[name] = here;
    sum += contribution(above, corrected, below) ** 2;
  }
  return sum / corrected ** 2;
}

function leakStep(setup: Setup): number {
  const leak = setup.leak?.value;
  return leak === undefined || leak === "none" ? 0 : digitUncertainty(leak.flow.step);
}

/** The air matters only where a result is stated in another one. */
function densityUncertainty(setup: Setup): number {
  const airMatters = setup.reference !== undefined || setup.benchAir !== undefined;
  return airMatters ? setup.air.value.densityUncertainty : 0;
}
