// The shape of a rule: a kind of finding, with the words it needs, and how it is found.
import type { Finding, FindingArgs, FindingExtras, FindingKind } from "../../shared/finding.ts";
import { raise } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";
import type { ComputedPair } from "../analysis/run-pairs.ts";
import type { ComputedTrace } from "../analysis/traces.ts";

/** What a rule of the whole file sees: its text, its names, and what its runs stand on; results for those who ask. */
export interface FileInput extends Pick<Analysis, "scope" | "settled" | "repeatability" | "compute"> {
  /** All runs; `settled` has one of each set of conditions. */
  readonly runs: Analysis["settled"];
  readonly traces: Analysis["traces"];
  readonly ladders: () => Analysis["ladders"];
  readonly limits: Limits;
}

export type Report<A extends FindingArgs> = (span: Span, args: A, extras?: FindingExtras) => void;

type Add = (finding: Finding) => void;

/** A rule with any arguments. */
export interface Rule extends FindingKind<never> {
  readonly ofFile: ((input: FileInput, add: Add) => void) | undefined;
  /** Made once for many runs: a year's records have thousands. */
  readonly ofRuns:
    | ((limits: Limits, add: Add) => (result: RunResult, traces: readonly ComputedTrace[]) => void)
    | undefined;
  readonly ofPair: ((pair: ComputedPair, limits: Limits, add: Add) => void) | undefined;
}

/**
 * Declares a rule; it reports with the arguments that `message` and `help` are made from. `check` looks at a file, its
 * spans count in the file; `checkRun` looks at one computed run with its traces, its spans count from the run's heading, so
 * that what was found in a run without traces stays true while the run does not change. `checkPair` looks at a run beside its baseline, or beside the
 * same stage on another bench; its spans count from the heading of the file's own run.
 */
export function rule<A extends FindingArgs>(
  declared: FindingKind<A> & {
    readonly check?: (input: FileInput, report: Report<A>) => void;
    readonly checkRun?: (
      result: RunResult,
      report: Report<A>,
      limits: Limits,
      traces: readonly ComputedTrace[],
    ) => void;
    readonly checkPair?: (pair: ComputedPair, report: Report<A>, limits: Limits) => void;
  },
): Rule {
  const { check, checkRun, checkPair, ...kind } = declared;
  const reportTo =
    (add: Add): Report<A> =>
    (span, args, extras) =>
      add(raise(kind, span, args, extras));
  return {
    ...kind,
    ofFile: check && ((input, add) => check(input, reportTo(add))),
    ofRuns:
      checkRun &&
      ((limits, add) => {
        const report = reportTo(add);
        return (result, traces) => checkRun(result, report, limits, traces);
      }),
    ofPair: checkPair && ((pair, limits, add) => checkPair(pair, reportTo(add), limits)),
  };
}
