// Whether runs are the cylinders of one head at one stage.
import type { Setup } from "../model/setup.ts";

/** Two or more runs of one port at one stage, each of another cylinder. */
export function areCylinders(setups: readonly Setup[]): boolean {
  const [first] = setups;
  const numbers = new Set(setups.map(({ run }) => run.cylinder));
  return (
    first !== undefined &&
    setups.length > 1 &&
    numbers.size === setups.length &&
    !numbers.has(undefined) &&
    setups.every(({ run, port }) => run.stage === first.run.stage && port?.id === first.port?.id)
  );
}
