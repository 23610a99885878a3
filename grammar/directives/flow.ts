// What a check plate passes.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, air, optional, quantity } from "../slots.ts";

export const flow = property({
  keyword: "flow",
  within: ["plate"],
  slots: {
    flow: quantity("flow"),
    depression: after("at", quantity("pressure")),
    in: after("in", optional(air())),
  },
  doc: "Certified flow of the plate at a depression, and the air for which the certificate states it.",
  example: "flow 422 cfm at 28 inH2O in isa",
  lower: ({ flow, depression, ...rest }, into) => {
    into.flow = { flow, depression, ...present(rest) };
  },
});
