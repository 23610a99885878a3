// One row of a run, computed; what its digits are worth is worked out only when it is asked for.
import type { Row } from "../model/model.ts";
import type { Branch, Flow, Impossible, RowResult, Slip } from "../model/result.ts";

/** Gives a number of one row. */
export type OfRow<T> = (row: RowResult) => T;

/** What the port passed at a row. */
export interface Passed {
  readonly flow: Flow;
  readonly massFlow: number;
  readonly effectiveArea: number | undefined;
}

/**
 * A row. What the rows of a run say of each other (branch, slips, means) is filled in after all of them are there.
 * Judging a record asks for few uncertainties, and each costs many times the row itself, so they are functions here.
 */
export class ComputedRow implements RowResult {
  readonly row: Row;
  readonly lift: number | undefined;
  readonly depression: number | undefined;
  readonly flow: Flow | undefined;
  readonly massFlow: number | undefined;
  readonly effectiveArea: number | undefined;
  branch: Branch | undefined = undefined;
  slip: Slip | undefined = undefined;
  impossible: Impossible | undefined = undefined;
  readonly #variance: OfRow<number>;
  #uncertainty: OfRow<number> | undefined = undefined;

  constructor(
    row: Row,
    lift: number | undefined,
    depression: number | undefined,
    passed: Passed | undefined,
    variance: OfRow<number>,
  ) {
    this.row = row;
    this.lift = lift;
    this.depression = depression;
    this.flow = passed?.flow;
    this.massFlow = passed?.massFlow;
    this.effectiveArea = passed?.effectiveArea;
    this.#variance = variance;
  }

  get variance(): number {
    return this.flow === undefined ? 0 : this.#variance(this);
  }

  get uncertainty(): number | undefined {
    return this.flow === undefined ? undefined : this.#uncertainty?.(this);
  }

  /** Says how uncertain the rows of its run are, once the run's stations are known. */
  uncertainBy(ofRow: OfRow<number>): void {
    this.#uncertainty = ofRow;
  }
}
