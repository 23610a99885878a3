// Computes the ladders of a file, each in the set-up of the run that it belongs to.
import { evaluateLadder } from "../../shared/calc/ladder/evaluate-ladder.ts";
import type { LadderResult } from "../../shared/model/ladder-result.ts";
import type { Ladder } from "../../shared/model/model.ts";
import type { Repeatability } from "../../shared/model/result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import type { Owner, OwningRun } from "./owning-run.ts";
import type { Placed, SourceFile } from "./source-file.ts";

/** A ladder of a file with its result, and where the run stands that it belongs to. */
export interface ComputedLadder {
  readonly placed: Placed<Ladder>;
  readonly run: OwningRun;
  readonly result: LadderResult;
}

interface Remembered {
  readonly setup: Setup;
  readonly repeat: number;
  readonly result: LadderResult;
}

/** While set-up and repeatability are the same, so is the result. */
const remembered = new WeakMap<Ladder, Remembered>();

/** The ladders of a file whose runs are known, in order. */
export function laddersOf(
  file: SourceFile,
  owner: Owner,
  repeatability: (setup: Setup) => Repeatability,
): readonly ComputedLadder[] {
  return file.others.flatMap(({ entity, start, path }) => {
    const run = entity.kind === "ladder" ? owner(entity.of?.id) : undefined;
    if (entity.kind !== "ladder" || run === undefined) return [];
    const repeat = repeatability(run.setup).deviation;
    const before = remembered.get(entity);
    const isSame = before?.setup === run.setup && before.repeat === repeat;
    const result = isSame ? before.result : evaluateLadder(entity, run.setup, repeat);
    remembered.set(entity, { setup: run.setup, repeat, result });
    return [{ placed: { entity, start, path }, run, result }];
  });
}
