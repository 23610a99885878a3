// One sweep of one port.
import { heading } from "../directive.ts";
import { name, optional, text } from "../slots.ts";
import { titled } from "../titled.ts";

export const run = heading({
  keyword: "run",
  slots: { id: name("run"), title: optional(text()) },
  columns: ["lift", "depression"],
  doc: "Opens a run: one port, read lift by lift in the order in which the points were taken.",
  example: "run i3-as-cast",
  open: (values, origin) => ({ ...titled("run", values, origin), expectations: [], notes: [] }),
});
