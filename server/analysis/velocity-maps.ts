// The velocity maps of a file with their results.
import { evaluateMap, type MapResult } from "../../shared/calc/velocity-map.ts";
import type { VelocityMap } from "../../shared/model/model.ts";
import type { Analysis } from "./project.ts";
import type { Placed } from "./source-file.ts";

/** A map of a file with its result. */
export interface ComputedMap {
  readonly placed: Placed<VelocityMap>;
  readonly result: MapResult;
}

/** The maps of the file itself, in order; pitot pressures are taken to speeds in the air of the run that a map is of. */
export function velocityMapsOf({
  scope,
  settled,
}: Pick<Analysis, "scope" | "settled">): readonly ComputedMap[] {
  return scope.file.others.flatMap(({ entity, start, path }) => {
    if (entity.kind !== "map") return [];
    const run = settled.find(({ placed }) => placed.entity.id === entity.of?.id);
    const result = evaluateMap(entity, run?.setup.air.value.density);
    return [{ placed: { entity, start, path }, result }];
  });
}
