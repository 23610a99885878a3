// What a run is beside its baseline, and beside the same stage on another bench: told at its heading, unasked.

import type { CompareRun } from "../../shared/render/compare-input.ts";
import { comparedRuns, compareTable } from "../../shared/render/compare-table.ts";
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import { type RunPair, runPairs } from "../analysis/run-pairs.ts";
import { escaped } from "./markdown.ts";

/** Markdown for each run that one is laid over, a heading and a list; all text of the record is escaped. */
export function pairHovers(analysis: Analysis, run: SettledRun): readonly string[] {
  const met = new Set<SettledRun>();
  return runPairs(analysis)
    .filter(({ own, other }) => own.placed === run.placed && !met.has(other) && met.add(other))
    .map((pair) => pairHover(analysis, pair));
}

function pairHover(analysis: Analysis, { own, other, analysis: theirs }: RunPair): string {
  const side = (owner: Analysis, run: SettledRun): CompareRun => ({
    result: owner.compute(run),
    file: relativePath(folderOf(analysis.scope.file.path), run.placed.path),
    revision: undefined,
    label: run.setup.run.id,
  });
  const baseline = side(theirs, other);
  const compared = comparedRuns({ baseline, others: [side(analysis, own)], anyway: false });
  return compared
    .flatMap((one) => {
      const { title, notes, summary } = compareTable(baseline, one);
      const list = summary.map(({ label, words }) => `- ${label}: ${escaped(words)}`).join("\n");
      return [`**${escaped(title)}**`, ...notes.map((note) => escaped(note)), list].filter(
        (part) => part !== "",
      );
    })
    .join("\n\n");
}
