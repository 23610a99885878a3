// What a reader is told a run is called.
import type { Run } from "../model/model.ts";

/** The run's id; its heading may have had none that can be read. */
export function runName({ id }: Pick<Run, "id">): string {
  return id === "" ? "run without a name" : id;
}
