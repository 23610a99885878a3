// Picks runs of a record by the ids behind `--run`.
import { nearest } from "../../shared/quantity/nearest.ts";
import type { ComputedRun } from "../analysis/project.ts";
import type { Io } from "./io.ts";
import type { OpenRecord } from "./open-record.ts";
import { complain } from "./subcommand.ts";

/** Those of the ids in their order, all without ids; `undefined` after having said which one is not there. */
export function pickRuns(
  { analysis, shown }: OpenRecord,
  ids: readonly string[],
  io: Io,
): readonly ComputedRun[] | undefined {
  if (ids.length === 0) return analysis.runs;
  const picked: ComputedRun[] = [];
  for (const id of new Set(ids)) {
    const found = analysis.runs.find(({ placed }) => placed.entity.id === id);
    if (found === undefined) {
      const known = analysis.runs.map(({ placed }) => placed.entity.id);
      const [near] = nearest(id, known);
      const hint = near === undefined ? "" : `; did you mean '${near}'?`;
      complain(io, `${shown}: there is no run '${id}' in it${hint}`);
      return undefined;
    }
    picked.push(found);
  }
  return picked;
}
