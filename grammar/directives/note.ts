// A remark about a whole session or run.
import { property } from "../directive.ts";
import { text } from "../slots.ts";

export const note = property({
  keyword: "note",
  within: ["session", "run"],
  repeatable: true,
  slots: { text: text() },
  doc: "A remark that belongs to the whole session or run.",
  example: 'note "valve job touched up between runs"',
  lower: ({ text }, into) => {
    into.notes = [...into.notes, text];
  },
});
