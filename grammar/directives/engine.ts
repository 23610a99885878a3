// An engine, and the line that says which engine a head belongs to.
import { heading, property } from "../directive.ts";
import { name, optional, reference, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const engine = [
  heading({
    keyword: "engine",
    slots: { id: name("engine"), title: optional(text()) },
    doc: "Opens an engine: bore, stroke, cylinders, the speeds that matter and its cams.",
    example: 'engine a114-engine "350 road engine"',
    open: (values, origin) => ({ ...titled("engine", values, origin), speeds: [], cams: [] }),
  }),
  property({
    keyword: "engine",
    within: ["head"],
    slots: { engine: reference("engine") },
    doc: "The engine that the head is for.",
    example: "engine a114-engine",
    lower: ({ engine }, into) => {
      into.engine = engine;
    },
  }),
];
