// One lift at several depressions.

import { present } from "../../shared/model/present.ts";
import { heading } from "../directive.ts";
import { after, quantity, reference } from "../slots.ts";

export const ladder = heading({
  keyword: "ladder",
  slots: { lift: quantity("length"), of: after("of", reference("run")) },
  columns: ["depression"],
  doc: "Opens a depression ladder: one lift of a run, read at several depressions.",
  example: "ladder 0.400 in of i3-as-cast",
  open: (values, origin) => ({ kind: "ladder", ...present(values), origin }),
});
