// How far the depression may be off its target.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const within = property({
  keyword: "within",
  within: ["bench", "session", "run"],
  slots: { band: quantity("pressure") },
  doc: "How far a point's depression may be off the target; within 1 % of the target unless stated.",
  example: "within 0.2 inH2O",
  lower: ({ band }, into) => {
    into.within = band;
  },
});
