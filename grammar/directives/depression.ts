// The depression at which a velocity map was taken.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const depression = property({
  keyword: "depression",
  within: ["map"],
  slots: { depression: quantity("pressure") },
  doc: "Depression at which the map was taken.",
  example: "depression 28 inH2O",
  lower: ({ depression }, into) => {
    into.depression = depression;
  },
});
