// A display that shows the share of a range's full-scale flow.
import type { Bench } from "../../model/model.ts";
import type { Meter, ReadDisplay } from "./meter.ts";

/** The share times the range's flow, true at the range's own depression and not scaled (definition of the range). */
function reader(bench: Bench): ReadDisplay {
  const flows = new Map(bench.ranges.map((range) => [range.name, range.flow.value]));
  const only = bench.ranges.length === 1 ? bench.ranges[0]?.flow.value : undefined;
  return (share, _depression, range) => {
    const full = range === undefined ? only : flows.get(range);
    return full === undefined ? undefined : share * full;
  };
}

export const percent: Meter = {
  shows: "percent",
  column: "reading",
  reader,
  // A leak is far below any range's share, so it is written as a flow.
  leakReader: () => (leak) => leak,
};
