// The clearance that a cam takes up before its valve moves.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const lash = property({
  keyword: "lash",
  within: ["cam"],
  slots: { lash: quantity("length") },
  doc: "Valve clearance; it is taken off the lift at the valve.",
  example: "lash 0.010 in",
  lower: ({ lash }, into) => {
    into.lash = lash;
  },
});
