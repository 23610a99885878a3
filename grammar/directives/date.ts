// When a run was taken, where that is not the session's date.
import { property } from "../directive.ts";
import { date as dateSlot } from "../slots.ts";

export const date = property({
  keyword: "date",
  within: ["run"],
  slots: { date: dateSlot() },
  doc: "Date of the run, with or without a time, where it is not the session's.",
  example: "date 2026-11-20T14:05+01:00",
  lower: ({ date }, into) => {
    into.date = date;
  },
});
