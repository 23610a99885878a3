// The shape of a rule: a kind of finding, with the words it needs, and how it is found.
import type { Finding, FindingArgs, FindingExtras, FindingKind } from "../../shared/finding.ts";
import { raise } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { Bench } from "../../shared/model/model.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import type { ComputedPair } from "../analysis/run-pairs.ts";
import type { ComputedTrace } from "../analysis/traces.ts";

/** What a rule of the whole file sees: its text, its names, and what its runs stand on; results for those who ask. */
export interface FileInput extends Pick<Analysis, "scope" | "repeatability" | "compute"> {
  readonly runs: Analysis["settled"];
  readonly ladders: () => Analysis["ladders"];
  readonly limits: Limits;
}

export type Report<A extends FindingArgs> = (span: Span, args: A, extras?: FindingExtras) => void;

export type Display = NonNullable<Bench["shows"]>["kind"];

type CheckRun<A extends FindingArgs> = (
  result: RunResult,
  report: Report<A>,
  limits: Limits,
  traces: readonly ComputedTrace[],
) => void;

/** How findings of a kind are found: one of these. */
interface Checks<A extends FindingArgs> {
  /** Looks at a file; spans count in the file. */
  readonly check?: (input: FileInput, report: Report<A>) => void;
  /** Looks at what runs stand on: at one run of each set of conditions; spans count in the file. */
  readonly checkSetup?: (run: SettledRun, report: Report<A>, input: FileInput) => void;
  /** Looks at one trace; spans count in the file. */
  readonly checkTrace?: (trace: ComputedTrace, report: Report<A>, input: FileInput) => void;
  /**
   * Looks at one computed run and its traces; spans count from the run's heading, so that what was found in a run without
   * traces stays true while the run does not change.
   */
  readonly checkRun?: CheckRun<A>;
  /** With `checkRun`: what a bench must show for its runs to be looked at; anything where this is missing. */
  readonly display?: Display;
  /** The same of runs in which something stands out: a slip, what cannot be, a fall-back, a lift that was read again. */
  readonly checkOdd?: CheckRun<A>;
  /** Looks at a run beside its baseline, or beside the same stage on another bench; spans count from its own heading. */
  readonly checkPair?: (pair: ComputedPair, report: Report<A>, limits: Limits) => void;
}

/** A rule with any arguments. */
export interface Rule extends FindingKind<never>, Checks<FindingArgs> {
  /** What this rule's own checks report with, and nothing else: the arguments are those of its kind. */
  readonly reportTo: (add: (finding: Finding) => void) => Report<FindingArgs>;
}

/** Declares a rule; it reports with the arguments that `message` and `help` are made from. */
export function rule<A extends FindingArgs>(declared: FindingKind<A> & Checks<A>): Rule {
  return {
    ...declared,
    reportTo: (add) => (span, args, extras) => add(raise(declared, span, args as FindingArgs as A, extras)),
  };
}
