// What a comparison is shown from, whichever way it is set.
import type { RunResult } from "../model/result.ts";

/** A run of a comparison. */
export interface CompareRun {
  readonly result: RunResult;
  /** As it is to be printed, with `/`. */
  readonly file: string;
  /** The revision that the file was read at; missing for the file as it stands. */
  readonly revision: string | undefined;
  /** What the run is called in heads and sentences; different for each of the runs. */
  readonly label: string;
}

export interface CompareInput {
  /** What the others are laid over. */
  readonly baseline: CompareRun;
  readonly others: readonly CompareRun[];
  /** Whether gains are also told of runs that were not read alike. */
  readonly anyway: boolean;
}

/** Names for runs: their ids; where two share one, the revision or the file before it; a number where that is the same too. */
export function compareLabels(
  runs: readonly { readonly id: string; readonly file: string; readonly revision: string | undefined }[],
): readonly string[] {
  const isAlone = (labels: readonly string[], label: string) =>
    labels.filter((other) => other === label).length === 1;
  const ids = runs.map(({ id }) => id);
  const revised = runs.map(({ id, revision }) => (revision === undefined ? id : `${revision}:${id}`));
  const filed = runs.map(({ file }, index) => `${file}#${revised[index] ?? ""}`);
  return runs.map(({ id }, index) => {
    if (isAlone(ids, id)) return id;
    const [byRevision, byFile] = [revised[index] ?? id, filed[index] ?? id];
    if (isAlone(revised, byRevision)) return byRevision;
    return isAlone(filed, byFile) ? byFile : `${byFile} (${index + 1})`;
  });
}
