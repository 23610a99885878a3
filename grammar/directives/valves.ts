// How many valves open into one port.
import { property } from "../directive.ts";
import { wholeNumber } from "../slots.ts";

export const valves = property({
  keyword: "valves",
  within: ["port"],
  slots: { number: wholeNumber() },
  doc: "Number of equal valves that are open together; areas are multiplied by it, flow is not.",
  example: "valves 2",
  lower: ({ number }, into) => {
    into.valves = number;
  },
});
