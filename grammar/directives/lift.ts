// The peak lift of a cam, or the lift of a velocity map.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const lift = property({
  keyword: "lift",
  within: ["cam", "map"],
  slots: { lift: quantity("length") },
  doc: "In a cam, the lobe's peak lift; in a map, the valve lift at which it was taken.",
  example: "lift 0.320 in",
  lower: ({ lift }, into) => {
    into.lift = lift;
  },
});
