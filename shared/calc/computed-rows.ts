// Computes the rows of a run one by one: flow, effective area, and what their written digits are worth.
import type { Row } from "../model/model.ts";
import type { Branch, Impossible, RowNumbers, RowResult, Slip } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { branchesOf } from "./branches.ts";
import { type ColumnValues, columnValues, columnWords } from "./column-values.ts";
import { ComputedRow } from "./computed-row.ts";
import { type ChainInput, type FlowChain, flowChain, leakNumber } from "./flow-chain.ts";
import { effectiveArea } from "./nozzle-flow.ts";
import { contribution, digitUncertainty, stepFor } from "./sensitivity.ts";
import type { Averages } from "./stations.ts";
import { testFlux } from "./test-flux.ts";

/**
 * The rows of a run, each computed by itself. Numbers stand in columns, and a row becomes an object only for those who want
 * one: judging a year's records asks for few.
 */
export class ComputedRows implements RowNumbers {
  readonly setup: Setup;
  /** As they were written. */
  readonly written: readonly Row[];
  readonly lift: number[] = [];
  readonly depression: number[] = [];
  readonly measured: number[] = [];
  readonly leak: number[] = [];
  readonly corrected: number[] = [];
  readonly effectiveArea: number[] = [];
  /** The rows that are not void and have lift and flow, by their places. */
  readonly complete: number[] = [];
  readonly #chain: FlowChain | undefined;
  readonly #depressions: ColumnValues | undefined;
  readonly #displays: ColumnValues | undefined;
  readonly #rangeOf: ((row: Row) => string | undefined) | undefined;
  #branch: readonly (Branch | undefined)[] | undefined = undefined;
  #results: readonly ComputedRow[] | undefined = undefined;

  // What the rows of a run say of each other, filled in once all of them are there.
  slips: ReadonlyMap<number, Slip> = NONE;
  impossible: ReadonlyMap<number, Impossible> = NONE;
  averages: Averages | undefined = undefined;

  constructor(setup: Setup) {
    const { table } = setup.run;
    const chain = flowChain(setup);
    const lifts = columnValues(table, "lift");
    const depressions = columnValues(table, "depression");
    const displays = chain && columnValues(table, chain.column);
    const rangeOf = columnWords(table, "range");
    this.setup = setup;
    this.written = table?.rows ?? [];
    this.#chain = chain;
    this.#depressions = depressions;
    this.#displays = displays;
    this.#rangeOf = rangeOf;

    const air = setup.air.value;
    const { density } = air;
    const direction = setup.direction.value;
    const leakShown = leakNumber(setup);
    for (const row of this.written) {
      const lift = lifts === undefined ? Number.NaN : lifts.number(row);
      const depression = depressions === undefined ? Number.NaN : depressions.number(row);
      let measured = Number.NaN;
      let leak = Number.NaN;
      let corrected = Number.NaN;
      if (chain !== undefined && displays !== undefined) {
        const range = rangeOf?.(row);
        measured = chain.measured(displays.number(row), depression, density, range);
        leak = chain.leak(leakShown, depression, density, range);
        corrected = chain.corrected(measured, leak, depression, density);
      }
      let area: number | undefined;
      if (Number.isFinite(corrected)) {
        area = effectiveArea(density * (measured - leak), testFlux(direction, air, depression));
      } else {
        measured = Number.NaN;
        leak = Number.NaN;
        corrected = Number.NaN;
      }
      this.lift.push(lift);
      this.depression.push(depression);
      this.measured.push(measured);
      this.leak.push(leak);
      this.corrected.push(corrected);
      this.effectiveArea.push(area ?? Number.NaN);
      if (row.void === undefined && !Number.isNaN(lift) && !Number.isNaN(corrected))
        this.complete.push(this.lift.length - 1);
    }
  }

  /** Of each row; none of one that is void, or whose lift is not what was set. Asked for once slips are known. */
  get branch(): readonly (Branch | undefined)[] {
    this.#branch ??= branchesOf(
      this.lift.map((lift, at) =>
        this.written[at]?.void !== undefined || this.slips.get(at)?.column === "lift" ? Number.NaN : lift,
      ),
    );
    return this.#branch;
  }

  get results(): readonly RowResult[] {
    if (this.#results !== undefined) return this.#results;
    const results: ComputedRow[] = [];
    for (const row of this.written) results.push(new ComputedRow(this, row, results.length));
    this.#results = results;
    return results;
  }

  /** Whether a row may take part in means: not void, complete, and neither a slip nor impossible. */
  isUsable(at: number): boolean {
    const hasFlow = !Number.isNaN(this.corrected[at] ?? Number.NaN);
    return hasFlow && this.branch[at] !== undefined && !this.slips.has(at) && !this.impossible.has(at);
  }

  /** Variance of a row's corrected flow from the written numbers and the air, relative. */
  variance(at: number): number {
    const row = this.written[at];
    const corrected = this.corrected[at] ?? Number.NaN;
    if (row === undefined || this.#chain === undefined || Number.isNaN(corrected)) return 0;
    const { setup } = this;
    const input: ChainInput = {
      display: this.#displays?.number(row) ?? Number.NaN,
      depression: this.depression[at] ?? Number.NaN,
      leak: leakNumber(setup),
      density: setup.air.value.density,
      range: this.#rangeOf?.(row),
    };
    return writtenVariance(this.#chain, input, corrected, {
      leak: leakStep(setup),
      density: densityUncertainty(setup),
      display: digitUncertainty(this.#displays?.step(row) ?? 0),
      depression: digitUncertainty(this.#depressions?.step(row) ?? 0),
    });
  }
}

const NONE: ReadonlyMap<number, never> = new Map<number, never>();

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
    const above = chain.through(input);
    input[name] = here - step;
    const below = chain.through(input);
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
