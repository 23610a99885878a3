// Finds the bench that readings were made on, in runs and in what belongs to one.
import type { Entity, Reference } from "../../shared/model/model.ts";
import type { View } from "./names.ts";

/** The bench that a block's readings were made on, as its file states it. */
export function benchOf({ file, locate }: View, entity: Entity): Reference | undefined {
  const shared = file.session?.entity.bench;
  switch (entity.kind) {
    case "run":
      return entity.bench ?? shared;
    case "trace":
    case "ladder": {
      const run = entity.of && locate("run", entity.of.id)?.entity;
      return run?.kind === "run" ? (run.bench ?? shared) : undefined;
    }
    case "plate-check":
      return shared;
    default:
      return undefined;
  }
}
