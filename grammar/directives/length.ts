// The length of a port.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const length = property({
  keyword: "length",
  within: ["port"],
  slots: { length: quantity("length") },
  doc: "Length of the port along its centre line.",
  example: "length 5.1 in",
  lower: ({ length }, into) => {
    into.length = length;
  },
});
