// The shape of a rule: a kind of finding, with the words it needs, and how it is found in a computed file.
import type { Finding, FindingArgs, FindingExtras, FindingKind } from "../../shared/finding.ts";
import { raise } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";

/** What a rule sees. */
export interface RuleInput extends Analysis {
  readonly limits: Limits;
}

export type Report<A extends FindingArgs> = (span: Span, args: A, extras?: FindingExtras) => void;

/** A rule with any arguments. */
export interface Rule extends FindingKind<never> {
  readonly run: (input: RuleInput, add: (finding: Finding) => void) => void;
}

/** Declares a rule; `check` reports with the arguments that `message` and `help` are made from. Spans count in the file. */
export function rule<A extends FindingArgs>(
  declared: FindingKind<A> & { readonly check: (input: RuleInput, report: Report<A>) => void },
): Rule {
  const { check, ...kind } = declared;
  return {
    ...kind,
    run: (input, add) => check(input, (span, args, extras) => add(raise(kind, span, args, extras))),
  };
}
