// Which head a port belongs to.
import { property } from "../directive.ts";
import { reference } from "../slots.ts";

export const of = property({
  keyword: "of",
  within: ["port"],
  slots: { head: reference("head") },
  doc: "The head that the port is in.",
  example: "of a114",
  lower: ({ head }, into) => {
    into.of = head;
  },
});
