// Takes the text of one file to its computed runs, the way the product does for a file without includes.

import { outline } from "../../grammar/outline.ts";
import { readLines } from "../../grammar/read-lines.ts";
import { evaluateRuns, repeatabilities } from "../../shared/calc/evaluate.ts";
import { evaluatePlateCheck, settlePlateCheck } from "../../shared/calc/plate-check.ts";
import { type Find, settle } from "../../shared/calc/setup.ts";
import type { Entities, Entity, NamedKind, Run, Session } from "../../shared/model/model.ts";
import type { PlateResult, RunResult } from "../../shared/model/result.ts";

/** What came of a file: its runs in order, and the line (from 0) that each run's block begins on. */
export interface Evaluated {
  readonly runs: readonly RunResult[];
  readonly plates: readonly PlateResult[];
  readonly startLine: (run: RunResult) => number;
}

/** Computes the runs of a text that stands alone. The version line may be left out. */
export function evaluateText(text: string): Evaluated {
  const { blocks } = outline(readLines(text));
  const entities = blocks.map(({ block }) => block.entity);
  const find = findIn(entities);
  const session = entities.find((entity): entity is Session => entity.kind === "session");
  const runs = entities.filter((entity): entity is Run => entity.kind === "run");
  const starts = new Map(blocks.map(({ block, start }) => [block.entity, start]));
  const setups = runs.map((run) => settle(run, session, find));
  const repeatability = repeatabilities(setups);
  return {
    runs: evaluateRuns(setups),
    plates: entities.flatMap((entity) => {
      if (entity.kind !== "plate-check") return [];
      const settled = settlePlateCheck(entity, session, find);
      return [evaluatePlateCheck(settled, repeatability(settled.setup))];
    }),
    startLine: ({ setup }) => starts.get(setup.run) ?? 0,
  };
}

function findIn(entities: readonly Entity[]): Find {
  return <K extends NamedKind>(kind: K, id: string) =>
    entities.find(
      (entity): entity is Entities[K] => entity.kind === kind && "id" in entity && entity.id === id,
    );
}

/** The only run of a text. */
export function evaluateRun(text: string): RunResult {
  const { runs } = evaluateText(text);
  const [run] = runs;
  if (run === undefined || runs.length !== 1) throw new RangeError(`one run is wanted, not ${runs.length}`);
  return run;
}
