// How many motors a bench has.
import { property } from "../directive.ts";
import { wholeNumber } from "../slots.ts";

export const motors = property({
  keyword: "motors",
  within: ["bench"],
  slots: { number: wholeNumber() },
  doc: "Number of the bench's motors.",
  example: "motors 6",
  lower: ({ number }, into) => {
    into.motors = number;
  },
});
