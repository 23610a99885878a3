// The lifts that a sweep visits.
import { property } from "../directive.ts";
import { after, quantity } from "../slots.ts";

export const stations = property({
  keyword: "stations",
  within: ["session", "run"],
  slots: {
    first: quantity("length"),
    last: after("to", quantity("length")),
    step: after("by", quantity("length")),
  },
  doc: "The lifts that a sweep visits; the editor fills the next one in.",
  example: "stations 0.100 in to 0.600 in by 0.100 in",
  lower: ({ first, last, step }, into) => {
    into.stations = { first, last, step };
  },
});
