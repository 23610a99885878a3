// One row of a run as an object, for those who want more of it than a column of its numbers.
import type { Row } from "../model/model.ts";
import type { Branch, Flow, Impossible, RowResult, Slip } from "../model/result.ts";
import type { ComputedRows } from "./computed-rows.ts";

/** A row; what it says stands in the columns of its run. */
export class ComputedRow implements RowResult {
  readonly row: Row;
  readonly #run: ComputedRows;
  readonly #at: number;

  constructor(run: ComputedRows, row: Row, at: number) {
    this.row = row;
    this.#run = run;
    this.#at = at;
  }

  get lift(): number | undefined {
    return given(this.#run.lift[this.#at]);
  }

  get depression(): number | undefined {
    return given(this.#run.depression[this.#at]);
  }

  get flow(): Flow | undefined {
    const corrected = given(this.#run.corrected[this.#at]);
    if (corrected === undefined) return undefined;
    const measured = this.#run.measured[this.#at] ?? Number.NaN;
    const leak = this.#run.leak[this.#at] ?? Number.NaN;
    return { measured, leak, port: measured - leak, corrected };
  }

  get massFlow(): number | undefined {
    const { flow } = this;
    return flow && this.#run.setup.air.value.density * flow.port;
  }

  get effectiveArea(): number | undefined {
    return given(this.#run.effectiveArea[this.#at]);
  }

  get variance(): number {
    return this.#run.variance(this.#at);
  }

  get branch(): Branch | undefined {
    return this.#run.branch[this.#at];
  }

  get slip(): Slip | undefined {
    return this.#run.slips.get(this.#at);
  }

  get impossible(): Impossible | undefined {
    return this.#run.impossible.get(this.#at);
  }

  get isUsable(): boolean {
    return this.#run.isUsable(this.#at);
  }

  get uncertainty(): number | undefined {
    return this.#run.averages?.uncertaintyOf(this.#at);
  }
}

function given(value: number | undefined): number | undefined {
  return value === undefined || Number.isNaN(value) ? undefined : value;
}
