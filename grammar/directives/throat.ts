// The throat under the seat.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const throat = property({
  keyword: "throat",
  within: ["port"],
  slots: { diameter: quantity("length") },
  doc: "Diameter of the throat under the seat.",
  example: "throat 1.780 in",
  lower: ({ diameter }, into) => {
    into.throat = diameter;
  },
});
