// A range of a bench that shows percent.
import { property } from "../directive.ts";
import { after, label, quantity } from "../slots.ts";

export const range = property({
  keyword: "range",
  within: ["bench"],
  repeatable: true,
  slots: { name: label(), flow: quantity("flow"), depression: after("at", quantity("pressure")) },
  doc: "A range of the bench: its name, its full-scale flow, and the depression at which that flow is true.",
  example: "range high 450 cfm at 28 inH2O",
  lower: ({ name, flow, depression }, into, span) => {
    into.ranges = [...into.ranges, { name, flow, depression, span }];
  },
});
