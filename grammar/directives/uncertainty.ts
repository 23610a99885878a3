// How well a flow scale is known.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const uncertainty = property({
  keyword: "uncertainty",
  within: ["bench", "plate"],
  slots: { uncertainty: quantity("ratio") },
  doc: "Expanded uncertainty (k = 2) of the bench's flow scale, or of the plate's certified flow.",
  example: "uncertainty 0.6 %",
  lower: ({ uncertainty }, into) => {
    into.uncertainty = uncertainty;
  },
});
