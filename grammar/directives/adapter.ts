// The bore of the adapter between head and bench.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const adapter = property({
  keyword: "adapter",
  within: ["session", "run"],
  slots: { bore: quantity("length") },
  doc: "Bore of the adapter between head and bench. It should be within a few percent of the engine's bore, since a wall close to the valve shrouds it.",
  example: "adapter 4.030 in",
  lower: ({ bore }, into) => {
    into.adapter = bore;
  },
});
