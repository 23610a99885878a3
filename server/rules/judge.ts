// Puts all rules to files, runs and pairs of runs.
import type { Finding, FindingArgs } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import type { ComputedPair } from "../analysis/run-pairs.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { RULES } from "./index.ts";
import type { Display, FileInput, Report, Rule } from "./rule.ts";

/** What the rules find; the same empty list wherever they find nothing. */
export interface Judge {
  /** In a file, in what its runs stand on, and in its traces; spans count in the file. */
  readonly file: (analysis: Analysis, limits: Limits) => readonly Finding[];
  /** In one run with its traces; spans count from its heading. */
  readonly run: (result: RunResult, limits: Limits, traces: readonly ComputedTrace[]) => readonly Finding[];
  /** In a run beside another; spans count from its heading. */
  readonly pair: (pair: ComputedPair, limits: Limits) => readonly Finding[];
}

const NONE: readonly Finding[] = [];

/** Made once for all files, since a year's records have thousands of runs: each rule has its report at hand. */
export const JUDGE: Judge = judgeBy(RULES);

function judgeBy(rules: readonly Rule[]): Judge {
  let found: Finding[] = [];
  const ready = rules.map((rule) => ({ rule, report: rule.reportTo((finding) => found.push(finding)) }));
  const ofFile = ready.flatMap(({ rule, report }) => bound(rule.check, report));
  const ofSetup = ready.flatMap(({ rule, report }) => bound(rule.checkSetup, report));
  const ofTrace = ready.flatMap(({ rule, report }) => bound(rule.checkTrace, report));
  const ofRun = ready.flatMap(({ rule, report }) => bound(rule.checkRun, report, rule.display));
  const byDisplay = Map.groupBy(ofRun, ({ display }) => display);
  const ofAny = byDisplay.get(undefined) ?? [];
  const ofOdd = ready.flatMap(({ rule, report }) => bound(rule.checkOdd, report));
  const ofPair = ready.flatMap(({ rule, report }) => bound(rule.checkPair, report));
  const taken = (): readonly Finding[] => {
    if (found.length === 0) return NONE;
    const all = found;
    found = [];
    return all;
  };
  return {
    file: (analysis, limits) => {
      // Nothing of a file whose judging did not come to its end.
      found = [];
      const { scope, settled: runs, repeatability, compute, traces } = analysis;
      const input: FileInput = {
        scope,
        runs,
        repeatability,
        compute,
        limits,
        ladders: () => analysis.ladders,
      };
      for (const { check, report } of ofFile) check(input, report);
      for (const run of distinct(runs)) for (const { check, report } of ofSetup) check(run, report, input);
      for (const trace of traces) for (const { check, report } of ofTrace) check(trace, report, input);
      return taken();
    },
    run: (result, limits, traces) => {
      for (const { check, report } of ofAny) check(result, report, limits, traces);
      const display = result.setup.bench?.shows?.kind;
      const ofDisplay = display && byDisplay.get(display);
      if (ofDisplay) for (const { check, report } of ofDisplay) check(result, report, limits, traces);
      if (isOdd(result)) for (const { check, report } of ofOdd) check(result, report, limits, traces);
      return taken();
    },
    pair: (pair, limits) => {
      for (const { check, report } of ofPair) check(pair, report, limits);
      return taken();
    },
  };
}

interface Bound<C> {
  readonly check: C;
  readonly report: Report<FindingArgs>;
  readonly display: Display | undefined;
}

function bound<C>(check: C | undefined, report: Report<FindingArgs>, display?: Display): readonly Bound<C>[] {
  return check === undefined ? [] : [{ check, report, display }];
}

/** Whether something stands out in a run; in most runs nothing does, and a quarter of the rules need not be asked. */
function isOdd({ slips, impossible, fallBacks, repeated, falling }: RunResult): boolean {
  return slips.size + impossible.size + fallBacks.length + repeated.length + falling.length > 0;
}

/**
 * One run of each set of conditions: what a file's rules find in the conditions of one they find in those of all that
 * stand on the same things and state nothing of their own.
 */
function distinct(settled: readonly SettledRun[]): readonly SettledRun[] {
  const first = settled.find(({ isPlain }) => isPlain);
  return settled.filter((run) => run === first || !run.isPlain);
}
