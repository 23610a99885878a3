// What can be looked at from a heading: a run's curve and the run that it is compared with, a trace, a ladder, a map.
import { compareRuns, type Gained } from "../../shared/calc/comparison.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { liftText, overLift } from "../../shared/render/station-words.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Placed } from "../analysis/source-file.ts";
import { signed } from "../rules/words.ts";
import type { Baseline, BaselineOf } from "./baseline.ts";
import { blockPictures } from "./block-pictures.ts";

/** A line of text above the heading on `line`; `baseline` is where that run's block begins. */
export type Lens =
  | { readonly kind: "curve"; readonly line: number; readonly title: string; readonly run: string }
  | { readonly kind: "picture"; readonly line: number; readonly title: string; readonly block: string }
  | { readonly kind: "baseline"; readonly line: number; readonly title: string; readonly baseline: Placed };

/** The lenses of a file from its first line to its last. */
export function codeLenses(analysis: Analysis, baselineOf: BaselineOf): readonly Lens[] {
  return [...runLenses(analysis, baselineOf), ...pictureLenses(analysis)].sort((a, b) => a.line - b.line);
}

function pictureLenses(analysis: Analysis): readonly Lens[] {
  return blockPictures(analysis).map(({ kind, start, id }) => ({
    kind: "picture",
    line: start,
    title: `Show ${kind}`,
    block: id,
  }));
}

function runLenses(analysis: Analysis, baselineOf: BaselineOf): readonly Lens[] {
  return analysis.settled.flatMap((settled): readonly Lens[] => {
    const { run } = settled.setup;
    const line = settled.placed.start;
    if (run.id === "") return [];
    const curve: Lens = { kind: "curve", line, title: "Show curve", run: run.id };
    // Only what is compared has to be computed here.
    if (run.baseline === undefined) return [curve];
    const result = analysis.compute(settled);
    const baseline = baselineOf(result);
    if (baseline === undefined) return [curve];
    const title = gainWords(result, baseline, run.baseline.id);
    return [curve, { kind: "baseline", line, title, baseline: baseline.placed }];
  });
}

function gainWords(result: RunResult, baseline: Baseline, id: string): string {
  const { mismatches, mean, lifts } = compareRuns(result, baseline.result);
  if (mismatches.length > 0) return `Baseline ${id} (not comparable)`;
  const words = ({ gain, isResolved }: Gained, what: string, where: string) =>
    `${signed(gain)} ${what} over ${id}, ${where}${isResolved ? "" : " (noise)"}`;
  const { lift } = displayUnits(result.setup);
  if (mean !== undefined) return words(mean, "mean", overLift(mean, lift));
  const shared = lifts.filter(({ gained }) => gained !== undefined);
  const [only] = shared;
  return shared.length === 1 && only?.gained !== undefined
    ? words(only.gained, "gain", `at ${liftText(only.lift, lift)} ${lift.symbol}`)
    : `Baseline ${id}`;
}
