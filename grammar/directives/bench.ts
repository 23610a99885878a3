// A flow bench, and the line that says which bench a session or a run was taken on.
import { heading, property } from "../directive.ts";
import { name, optional, reference, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const bench = [
  heading({
    keyword: "bench",
    slots: { id: name("bench"), title: optional(text()) },
    required: ["shows"],
    columns: [],
    doc: "Opens a flow bench: what its display shows, how well it repeats, how quickly it comes up to its depression. A bench that shows a signal has a calibration table with the columns signal and flow.",
    example: 'bench north "six-motor bench by the north wall"',
    open: (values, origin) => ({ ...titled("bench", values, origin), ranges: [] }),
  }),
  property({
    keyword: "bench",
    within: ["session", "run"],
    slots: { bench: reference("bench") },
    doc: "The bench that the readings were taken on.",
    example: "bench north",
    lower: ({ bench }, into) => {
      into.bench = bench;
    },
  }),
];
