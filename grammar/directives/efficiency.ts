// The volumetric efficiency that an engine is taken to have.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const efficiency = property({
  keyword: "efficiency",
  within: ["engine"],
  slots: { efficiency: quantity("ratio") },
  doc: "Volumetric efficiency that the engine is taken to have.",
  example: "efficiency 92 %",
  lower: ({ efficiency }, into) => {
    into.efficiency = efficiency;
  },
});
