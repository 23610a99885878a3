// What is found in a run beside another: its baseline, or the same stage on another bench.
import type { Finding } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import { type ComputedPair, runPairs, type VisibleRun } from "../analysis/run-pairs.ts";
import { hiddenHere } from "../rules/hidden-fall-back.ts";
import { JUDGE } from "../rules/judge.ts";

export interface JudgedPairs {
  /** The result of a run of the file; that of a run in a pair is computed once. */
  readonly resultOf: (run: SettledRun) => RunResult;
  /** What was found in each pair, counted from the heading of the file's own run, and the line of that heading. */
  readonly judge: () => readonly { readonly start: number; readonly findings: readonly Finding[] }[];
}

/** The pairs of a file's runs. */
export function judgedPairs(analysis: Analysis, limits: Limits): JudgedPairs {
  const pairs = runPairs(analysis);
  if (pairs.length === 0) return { resultOf: analysis.compute, judge: () => [] };
  const paired = new Set(pairs.flatMap(({ own, others }) => [own, ...others.map(({ run }) => run)]));
  const known = new Map<SettledRun, RunResult>();
  const computed = (owner: Analysis, run: SettledRun): RunResult => {
    const result = known.get(run) ?? owner.compute(run);
    if (paired.has(run)) known.set(run, result);
    return result;
  };
  return {
    resultOf: (run) => computed(analysis, run),
    judge: () =>
      pairs.map(({ as, own, others }) => {
        const result = computed(analysis, own);
        const pairWith = ({ run, analysis: theirs }: VisibleRun): ComputedPair => {
          const { path, start } = run.placed;
          const place = { path, start, isOwnFile: path === analysis.scope.file.path };
          return { as, own: result, other: computed(theirs, run), place };
        };
        const pair = tellingPair(others, pairWith);
        return { start: own.placed.start, findings: pair === undefined ? [] : pairFindings(pair, limits) };
      }),
  };
}

/** The pair with the first of the others that has something to tell of a fall-back, else with the first. */
function tellingPair(
  others: readonly VisibleRun[],
  pairWith: (other: VisibleRun) => ComputedPair,
): ComputedPair | undefined {
  const [first] = others;
  const telling = others.length > 1 && others.find((other) => hiddenHere(pairWith(other)).length > 0);
  return first && pairWith(telling || first);
}

interface JudgedPair extends ComputedPair {
  readonly limits: Limits;
  readonly findings: readonly Finding[];
}

/** What was found in the pairs of a result; it stays true while both results and their places are the same. */
const judged = new WeakMap<RunResult, readonly JudgedPair[]>();

/** The findings of one pair; their spans count from the heading of the file's own run. */
function pairFindings(pair: ComputedPair, limits: Limits): readonly Finding[] {
  const known = judged.get(pair.own) ?? [];
  const isSame = ({ as, other, place, limits: before }: JudgedPair) =>
    as === pair.as &&
    other === pair.other &&
    before === limits &&
    place.path === pair.place.path &&
    place.start === pair.place.start;
  const before = known.find(isSame);
  if (before !== undefined) return before.findings;
  const findings = JUDGE.pair(pair, limits);
  // An older state of the same other run is forgotten.
  const others = known.filter(
    ({ as, other, place }) =>
      as !== pair.as || place.path !== pair.place.path || other.setup.run.id !== pair.other.setup.run.id,
  );
  judged.set(pair.own, [...others, { ...pair, limits, findings }]);
  return findings;
}
