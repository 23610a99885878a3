// When a check plate must be certified again.
import { property } from "../directive.ts";
import { date } from "../slots.ts";

export const due = property({
  keyword: "due",
  within: ["plate"],
  slots: { date: date() },
  doc: "Date by which the plate is to be certified again.",
  example: "due 2027-06-01",
  lower: ({ date }, into) => {
    into.due = date;
  },
});
