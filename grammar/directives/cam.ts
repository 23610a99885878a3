// A cam, and the line that says which cams an engine has.
import { heading, property } from "../directive.ts";
import { name, optional, reference, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const cam = [
  heading({
    keyword: "cam",
    slots: { id: name("cam"), title: optional(text()) },
    required: ["side"],
    columns: [],
    doc: "Opens a cam: by its law, lift and duration, or by a measured table with the columns angle and lift.",
    example: 'cam mild-intake "mild road cam, intake"',
    open: (values, origin) => titled("cam", values, origin),
  }),
  property({
    keyword: "cam",
    within: ["engine"],
    repeatable: true,
    slots: { cam: reference("cam") },
    doc: "A cam of this engine, one line a side.",
    example: "cam mild-intake",
    lower: ({ cam }, into) => {
      into.cams = [...into.cams, cam];
    },
  }),
];
