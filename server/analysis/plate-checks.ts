// The plate checks of a file with their results.
import { evaluatePlateCheck, settlePlateCheck } from "../../shared/calc/plate-check.ts";
import type { PlateCheck } from "../../shared/model/model.ts";
import type { PlateResult } from "../../shared/model/result.ts";
import type { Analysis } from "./project.ts";
import type { Placed } from "./source-file.ts";

/** A plate check of a file with its result. */
export interface ComputedPlateCheck {
  readonly placed: Placed<PlateCheck>;
  readonly result: PlateResult;
}

/** The plate checks of the file itself, in order. */
export function plateChecksOf({
  scope,
  repeatability,
}: Pick<Analysis, "scope" | "repeatability">): readonly ComputedPlateCheck[] {
  const session = scope.file.session?.entity;
  return scope.file.others.flatMap(({ entity, start, path }) => {
    if (entity.kind !== "plate-check") return [];
    const settled = settlePlateCheck(entity, session, scope.find);
    const result = evaluatePlateCheck(settled, repeatability(settled.setup));
    return [{ placed: { entity, start, path }, result }];
  });
}
