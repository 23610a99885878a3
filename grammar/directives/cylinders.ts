// How many cylinders an engine has.
import { property } from "../directive.ts";
import { wholeNumber } from "../slots.ts";

export const cylinders = property({
  keyword: "cylinders",
  within: ["engine"],
  slots: { number: wholeNumber() },
  doc: "Number of the engine's cylinders.",
  example: "cylinders 8",
  lower: ({ number }, into) => {
    into.cylinders = number;
  },
});
