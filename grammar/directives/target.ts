// The depression that a session holds.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const target = property({
  keyword: "target",
  within: ["session", "run"],
  slots: { depression: quantity("pressure") },
  doc: "Depression that the bench is to hold at every point; 28 inH2O unless stated, which is common practice.",
  example: "target 28 inH2O",
  lower: ({ depression }, into) => {
    into.target = depression;
  },
});
