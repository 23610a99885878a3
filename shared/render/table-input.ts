// What every kind of table is made from, so that they all are called alike.
import type { LadderResult } from "../model/ladder-result.ts";
import type { PlateResult, RowResult, RunResult } from "../model/result.ts";
import type { TraceResult } from "../model/trace-result.ts";
import type { WantedUnits } from "./wanted-units.ts";

/** A plate check, the line of the file that it begins on, from 0, and the codes of the findings on that line. */
export interface PlateInput {
  readonly result: PlateResult;
  readonly startLine: number;
  readonly findings: readonly string[];
}

export interface TableInput {
  /** As it is to be printed, with `/`. */
  readonly file: string;
  readonly runs: readonly RunResult[];
  readonly plates: readonly PlateInput[];
  /** The line of the file that the run's block begins on, from 0. */
  readonly startLine: (run: RunResult) => number;
  /** Codes of the findings that stand on a row, in the order in which they are to be shown. */
  readonly findingsOf: (run: RunResult, row: RowResult) => readonly string[];
  /** What the findings say of the run's port as a whole, one sentence each. */
  readonly portWords?: (run: RunResult) => readonly string[];
  /** Units to show instead of the record's own. */
  readonly wanted?: WantedUnits;
  readonly traces?: readonly AtLine<TraceResult>[];
  readonly ladders?: readonly AtLine<LadderResult>[];
}

/** A result and the line of the file that its block begins on, from 0. */
export interface AtLine<T> {
  readonly line: number;
  readonly result: T;
}
