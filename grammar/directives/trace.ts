// The approach to the depression at one lift.

import { present } from "../../shared/model/present.ts";
import { heading } from "../directive.ts";
import { after, quantity, reference } from "../slots.ts";

export const trace = heading({
  keyword: "trace",
  slots: { lift: quantity("length"), of: after("of", reference("run")) },
  columns: ["time", "depression"],
  doc: "Opens a trace of one lift of a run: depression and flow on time, from opening the valve.",
  example: "trace 0.400 in of i3-as-cast",
  open: (values, origin) => ({ kind: "trace", ...present(values), origin }),
});
