// How long a bench usually takes to its depression.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const settle = property({
  keyword: "settle",
  within: ["bench"],
  slots: { time: quantity("time") },
  doc: "Time that this bench usually takes from opening the valve to holding its target.",
  example: "settle 1.6 s",
  lower: ({ time }, into) => {
    into.settle = time;
  },
});
