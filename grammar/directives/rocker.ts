// The ratio between cam and valve.
import { property } from "../directive.ts";
import { number } from "../slots.ts";

export const rocker = property({
  keyword: "rocker",
  within: ["cam"],
  slots: { ratio: number() },
  doc: "Rocker ratio; the valve's lift is the lobe's times this, less the lash.",
  example: "rocker 1.5",
  lower: ({ ratio }, into) => {
    into.rocker = ratio;
  },
});
