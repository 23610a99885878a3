// A display that shows volume flow, as it is or already scaled to a depression.
import type { Bench } from "../../model/model.ts";
import type { Meter, ReadDisplay } from "./meter.ts";

/**
 * A display already scaled to P shows `Q sqrt(P/dp)`; the flow at the row's own depression is that times
 * `sqrt(dp/P)` (square root law of an orifice, Bernoulli).
 */
function reader(bench: Bench): ReadDisplay {
  const scaledTo = bench.shows?.at?.value;
  if (scaledTo === undefined) return asShown;
  return (flow, depression) => (scaledTo > 0 ? flow * Math.sqrt(depression / scaledTo) : undefined);
}

const asShown: ReadDisplay = (flow) => flow;

export const flow: Meter = { shows: "flow", column: "flow", reader, leakReader: reader };
