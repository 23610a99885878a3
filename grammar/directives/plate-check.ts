// A reading of a check plate.

import { present } from "../../shared/model/present.ts";
import { heading } from "../directive.ts";
import { reference } from "../slots.ts";

export const plateCheck = heading({
  keyword: "plate-check",
  slots: { plate: reference("plate") },
  columns: ["depression"],
  doc: "Opens readings of a check plate in this session: columns as in a run, without lift.",
  example: "plate-check p2500",
  open: (values, origin) => ({ kind: "plate-check", ...present(values), origin }),
});
