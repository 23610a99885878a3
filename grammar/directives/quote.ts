// The depression that results are quoted at.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const quote = property({
  keyword: "quote",
  within: ["session", "run"],
  slots: { depression: quantity("pressure") },
  doc: "Depression that results are quoted at, where it is not the target.",
  example: "quote 28 inH2O",
  lower: ({ depression }, into) => {
    into.quote = depression;
  },
});
