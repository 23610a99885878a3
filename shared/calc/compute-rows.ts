// Computes the rows of a run one by one: flow, mass flow, effective area, and what their written digits are worth.
import type { Row } from "../model/model.ts";
import type { RowResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { columnValues, columnWords } from "./column-values.ts";
import { ComputedRow } from "./computed-row.ts";
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

  const inputOf = (row: Row): ChainInput | undefined => {
    const depression = depressions?.value(row);
    const display = displays?.value(row);
    if (depression === undefined || display === undefined) return undefined;
    return { display, depression, leak, density: air.density, range: ranges?.(row) };
  };
  const variance = ({ row, flow }: RowResult): number => {
    const input = inputOf(row);
    if (chain === undefined || input === undefined || flow === undefined) return 0;
    return writtenVariance(chain, input, flow.corrected, {
      leak: leakStep(setup),
      density: densityUncertainty(setup),
      display: digitUncertainty(displays?.step(row) ?? 0),
      depression: digitUncertainty(depressions?.step(row) ?? 0),
    });
  };

  return (table?.rows ?? []).map((row) => {
    const lift = lifts?.value(row);
    const depression = depressions?.value(row);
    const input = inputOf(row);
    const flow = input && chain?.flow(input);
    if (input === undefined || flow === undefined) {
      return new ComputedRow({ row, lift, depression, ...NO_FLOW }, variance);
    }
    const massFlow = air.density * flow.port;
    const { p0, rho0, ratio } = testPressures(direction, air, input.depression);
    const area = effectiveArea(massFlow, p0, rho0, ratio);
    return new ComputedRow({ row, lift, depression, flow, massFlow, effectiveArea: area }, variance);
  });
}

const NO_FLOW = { flow: undefined, massFlow: undefined, effectiveArea: undefined };

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
