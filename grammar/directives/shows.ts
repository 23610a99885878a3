// What a bench's display shows.
import { property } from "../directive.ts";
import { present } from "../../shared/model/present.ts";
import { after, air, choice, optional, quantity } from "../slots.ts";

export const shows = property({
  keyword: "shows",
  within: ["bench"],
  slots: {
    kind: choice(["flow", "meter-flow", "percent", "drop", "signal"]),
    at: after("at", optional(quantity("pressure"))),
    in: after("in", optional(air())),
  },
  doc: "What the display shows: flow as read or already scaled to a depression, flow in the meter's own air, percent of a range, the drop over an element, or a signal with a calibration table. `in` names the air for which the bench's numbers are true.",
  example: "shows flow at 28 inH2O in isa",
  lower: ({ kind, ...rest }, into) => {
    into.shows = { kind, ...present(rest) };
  },
});
