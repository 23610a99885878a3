// Computes the runs of a file: rows, branches, averaged stations, their uncertainties, and where flow falls back.
import type { Bench, Row, Run } from "../model/model.ts";
import type {
  FallBack,
  Impossible,
  Repeatability,
  RowResult,
  RunResult,
  Slip,
  Station,
} from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { columnValues } from "./column-values.ts";
import { ComputedRows } from "./computed-rows.ts";
import { everFalls, fallBacks } from "./fall-back.ts";
import { areasOf } from "./port-areas.ts";
import { repeatabilityOf } from "./repeatability.ts";
import { Averages, type StationTerms } from "./stations.ts";
import { unitSlips } from "./unit-slip.ts";

/** The results of the runs of one file, in order. Runs on one bench share the repeatability pooled from all of them. */
export function evaluateRuns(setups: readonly Setup[]): RunResult[] {
  const repeatability = repeatabilities(setups);
  return setups.map((setup) => evaluateRun(setup, repeatability(setup)));
}

/** The result of one run on a bench that repeats as given. */
export function evaluateRun(setup: Setup, repeatability: Repeatability): RunResult {
  const rows = relatedRows(setup);
  const terms: StationTerms = {
    deviation: repeatability.deviation,
    liftSetting: setup.liftSetting.value,
    scale: (setup.bench?.uncertainty?.value ?? 0) / 2,
  };
  rows.averages = new Averages(rows, terms);
  const impossible = impossibleRows(rows, rows.averages);
  if (impossible !== undefined) {
    rows.impossible = impossible;
    rows.averages = new Averages(rows, terms);
  }
  return new EvaluatedRun(rows, rows.averages, repeatability);
}

/** A run; rows and stations become objects, and falls are looked for, when they are asked for. */
class EvaluatedRun implements RunResult {
  readonly setup: Setup;
  readonly numbers: ComputedRows;
  readonly repeatability: Repeatability;
  readonly #averages: Averages;
  #fallBacks: readonly FallBack[] | undefined = undefined;

  constructor(rows: ComputedRows, averages: Averages, repeatability: Repeatability) {
    this.setup = rows.setup;
    this.numbers = rows;
    this.repeatability = repeatability;
    this.#averages = averages;
  }

  get written(): readonly Row[] {
    return this.numbers.written;
  }

  get rows(): readonly RowResult[] {
    return this.numbers.results;
  }

  get slips(): ReadonlyMap<number, Slip> {
    return this.numbers.slips;
  }

  get impossible(): ReadonlyMap<number, Impossible> {
    return this.numbers.impossible;
  }

  get usable(): readonly number[] {
    return this.#averages.usable;
  }

  get rising(): readonly Station[] {
    return this.#averages.rising;
  }

  get falling(): readonly Station[] {
    return this.#averages.falling;
  }

  get repeated(): readonly Station[] {
    return this.#averages.repeated;
  }

  get fallBacks(): readonly FallBack[] {
    this.#fallBacks ??= everFalls(this.#averages.means.rising.flow)
      ? fallBacks(this.rising, this.repeatability)
      : [];
    return this.#fallBacks;
  }
}

/**
 * How well the bench of each run of a file repeats: as stated, else pooled from the repeated readings of all the file's
 * runs on it, else a default.
 */
export function repeatabilities(setups: readonly Setup[]): (setup: Setup) => Repeatability {
  const known = new Map<Bench | undefined, Repeatability>();
  return ({ bench }) => {
    const before = known.get(bench);
    if (before !== undefined) return before;
    const isStated = bench === undefined || bench.repeat !== undefined;
    const runs = isStated ? [] : setups.filter((setup) => setup.bench === bench && hasRepeats(setup.run));
    const found = repeatabilityOf(
      bench,
      runs.flatMap((setup) => repeatedCells(relatedRows(setup))),
    );
    known.set(bench, found);
    return found;
  };
}

/** Whether some lift of a run was read twice: no other run tells how well its bench repeats. */
function hasRepeats({ table }: Run): boolean {
  const lifts = columnValues(table, "lift");
  const read = table?.rows.flatMap((row) => lifts?.value(row) ?? []) ?? [];
  return new Set(read).size < read.length;
}

/** The rows of a run with what they say of each other. */
function relatedRows(setup: Setup): ComputedRows {
  const rows = new ComputedRows(setup);
  rows.slips = slipsAmong(rows);
  return rows;
}

function slipsAmong({ complete, lift, corrected }: ComputedRows): ReadonlyMap<number, Slip> {
  if (complete.length === lift.length) return unitSlips({ lift, flow: corrected });
  const given = (column: readonly number[]) => complete.map((at) => column[at] ?? Number.NaN);
  const slips = unitSlips({ lift: given(lift), flow: given(corrected) });
  return new Map([...slips].map(([index, slip]) => [complete[index] ?? index, slip]));
}

/** Corrected flows of rows that were taken more than once, by lift and branch. */
function repeatedCells(rows: ComputedRows): (readonly number[])[] {
  const cells = new Map<string, number[]>();
  for (const at of rows.complete) {
    if (!rows.isUsable(at)) continue;
    const key = `${rows.branch[at]} ${rows.lift[at]}`;
    const corrected = rows.corrected[at] ?? Number.NaN;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [corrected]);
    else cell.push(corrected);
  }
  return [...cells.values()].filter((cell) => cell.length > 1);
}

/** The flows that are more than the least area of the port can pass, by more than they are uncertain; `undefined` of none. */
function impossibleRows(
  { setup, complete, lift, effectiveArea }: ComputedRows,
  averages: Averages,
): ReadonlyMap<number, Impossible> | undefined {
  if (setup.port === undefined) return undefined;
  let found: Map<number, Impossible> | undefined;
  const areas = areasOf(setup.port);
  for (const at of complete) {
    const opened = lift[at] ?? Number.NaN;
    const effective = effectiveArea[at] ?? Number.NaN;
    const geometric = areas.least(opened);
    // The uncertainty is asked for only where it can matter.
    if (!(effective > geometric)) continue;
    const uncertainty = averages.uncertaintyOf(at) ?? 0;
    if (effective * (1 - uncertainty) > geometric) {
      found ??= new Map();
      found.set(at, { area: areas.leastName(opened), geometric, effective, uncertainty });
    }
  }
  return found;
}
