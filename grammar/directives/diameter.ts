// The hole of a check plate.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const diameter = property({
  keyword: "diameter",
  within: ["plate"],
  slots: { diameter: quantity("length") },
  doc: "Diameter of the plate's hole.",
  example: "diameter 2.500 in",
  lower: ({ diameter }, into) => {
    into.diameter = diameter;
  },
});
