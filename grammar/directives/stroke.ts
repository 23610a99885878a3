// The engine's stroke.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const stroke = property({
  keyword: "stroke",
  within: ["engine"],
  slots: { stroke: quantity("length") },
  doc: "Stroke of the engine.",
  example: "stroke 3.480 in",
  lower: ({ stroke }, into) => {
    into.stroke = stroke;
  },
});
