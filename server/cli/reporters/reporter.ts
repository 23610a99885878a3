// The shape of a reporter.
import type { Outcome } from "../outcome.ts";

export interface ReportStyle {
  readonly isColoured: boolean;
}

/** Makes the whole output of `check`, with its last line end. */
export type Reporter = (outcome: Outcome, style: ReportStyle) => string;
