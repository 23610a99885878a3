// What a run must reach.
import { property } from "../directive.ts";
import { after, choice, quantity } from "../slots.ts";

export const expect = property({
  keyword: "expect",
  within: ["run"],
  repeatable: true,
  slots: {
    what: choice(["flow"]),
    flow: quantity("flow"),
    lift: after("at", quantity("length")),
    within: after("within", quantity("ratio")),
  },
  doc: "Corrected flow that the run is to reach at a lift, and how far off it may be.",
  example: "expect flow 235 cfm at 0.500 in within 1 %",
  lower: ({ flow, lift, within }, into, span) => {
    into.expectations = [...into.expectations, { flow, lift, within, span }];
  },
});
