// The valve's head.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const valve = property({
  keyword: "valve",
  within: ["port"],
  slots: { diameter: quantity("length") },
  doc: "Diameter of the valve head.",
  example: "valve 2.020 in",
  lower: ({ diameter }, into) => {
    into.valve = diameter;
  },
});
