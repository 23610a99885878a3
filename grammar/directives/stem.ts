// The valve's stem.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const stem = property({
  keyword: "stem",
  within: ["port"],
  slots: { diameter: quantity("length") },
  doc: "Diameter of the valve's stem.",
  example: "stem 11/32 in",
  lower: ({ diameter }, into) => {
    into.stem = diameter;
  },
});
