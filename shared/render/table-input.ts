// What every kind of table is made from, so that they all are called alike.
import type { RowResult, RunResult } from "../model/result.ts";

export interface TableInput {
  /** As it is to be printed, with `/`. */
  readonly file: string;
  readonly runs: readonly RunResult[];
  /** The line of the file that the run's block begins on, from 0. */
  readonly startLine: (run: RunResult) => number;
  /** Codes of the findings that stand on a row, in the order in which they are to be shown. */
  readonly findingsOf: (run: RunResult, row: RowResult) => readonly string[];
}
