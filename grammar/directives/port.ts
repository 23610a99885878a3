// A port, and the line that says which port a session or a run measures.
import { heading, property } from "../directive.ts";
import { name, optional, reference, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const port = [
  heading({
    keyword: "port",
    slots: { id: name("port"), title: optional(text()) },
    required: ["side", "valve"],
    doc: "Opens a port of a head: its side, valve, seat, throat, stem and named sections.",
    example: "port a114-intake",
    open: (values, origin) => ({ ...titled("port", values, origin), sections: [] }),
  }),
  property({
    keyword: "port",
    within: ["session", "run"],
    slots: { port: reference("port") },
    doc: "The port that was measured.",
    example: "port a114-intake",
    lower: ({ port }, into) => {
      into.port = port;
    },
  }),
];
