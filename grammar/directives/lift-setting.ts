// How well a lift can be set on a bench.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const liftSetting = property({
  keyword: "lift-setting",
  within: ["bench"],
  slots: { uncertainty: quantity("length") },
  doc: "Standard uncertainty of a lift as it is set on this bench; 0.001 in unless stated.",
  example: "lift-setting 0.0015 in",
  lower: ({ uncertainty }, into) => {
    into.liftSetting = uncertainty;
  },
});
