// Local air speeds over a section of the port.

import { present } from "../../shared/model/present.ts";
import { heading } from "../directive.ts";
import { after, optional, reference, text } from "../slots.ts";

export const map = heading({
  keyword: "map",
  slots: { title: optional(text()), of: after("of", reference("run")) },
  required: ["lift", "depression"],
  columns: ["x", "y"],
  doc: "Opens a velocity map of a section, with the places of the probe and a pitot pressure or a speed at each.",
  example: 'map "at the pinch" of i3-as-cast',
  open: (values, origin) => ({ kind: "map", ...present(values), origin }),
});
