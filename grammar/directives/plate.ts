// A certified plate that a bench is checked with.
import { heading } from "../directive.ts";
import { name, optional, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const plate = heading({
  keyword: "plate",
  slots: { id: name("plate"), title: optional(text()) },
  doc: "Opens a check plate of known flow.",
  example: 'plate p2500 "2.500 in sharp-edged plate"',
  open: (values, origin) => titled("plate", values, origin),
});
