// Which cylinder's port a run measures.
import { property } from "../directive.ts";
import { wholeNumber } from "../slots.ts";

export const cylinder = property({
  keyword: "cylinder",
  within: ["run"],
  slots: { number: wholeNumber() },
  doc: "The cylinder whose port was measured.",
  example: "cylinder 3",
  lower: ({ number }, into) => {
    into.cylinder = number;
  },
});
