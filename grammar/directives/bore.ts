// The engine's bore.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const bore = property({
  keyword: "bore",
  within: ["engine"],
  slots: { bore: quantity("length") },
  doc: "Bore of the engine's cylinders.",
  example: "bore 4.030 in",
  lower: ({ bore }, into) => {
    into.bore = bore;
  },
});
