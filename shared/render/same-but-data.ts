// Tells whether a picture that is on show can take a new one's data, or has to be made anew.
import type { VegaLiteSpec } from "./chart-shell.ts";

/** Whether two specifications differ in the rows of their datasets at most, so that exchanging these turns one into the other. */
export function sameButData(a: VegaLiteSpec, b: VegaLiteSpec): boolean {
  return withoutRows(a) === withoutRows(b);
}

function withoutRows({ datasets, ...rest }: VegaLiteSpec): string {
  return JSON.stringify([rest, Object.keys((datasets ?? {}) as object)]);
}
