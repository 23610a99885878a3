// How well a bench repeats.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const repeat = property({
  keyword: "repeat",
  within: ["bench"],
  slots: { deviation: quantity("ratio") },
  doc: "One standard deviation of one reading of this bench, as a share of the reading.",
  example: "repeat 0.35 %",
  lower: ({ deviation }, into) => {
    into.repeat = deviation;
  },
});
