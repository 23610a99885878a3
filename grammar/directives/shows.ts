// What a bench's display shows.

import { present } from "../../shared/model/present.ts";
import { type Misfit, property } from "../directive.ts";
import { after, air, choice, optional, quantity } from "../slots.ts";

/** What is shown may be true for a certain air only where the bench itself turns its signal into a flow. */
const STATED_IN_AN_AIR: readonly string[] = ["flow", "percent", "signal"];

export const shows = property({
  keyword: "shows",
  within: ["bench"],
  slots: {
    kind: choice(["flow", "meter-flow", "percent", "drop", "signal"]),
    at: after("at", optional(quantity("pressure"))),
    in: after("in", optional(air())),
  },
  doc: "What the display shows: flow as read or already scaled to a depression, flow in the meter's own air, percent of a range, the drop over an element, or a signal with a calibration table. `at` stands behind flow only. `in` names the air for which the numbers of a bench that shows flow, percent or a signal are true.",
  example: "shows flow at 28 inH2O in isa",
  misfits: (values) => {
    const misfits: Misfit[] = [];
    if (values.at !== undefined && values.kind !== "flow") misfits.push({ extra: "at" });
    if (values.in !== undefined && !STATED_IN_AN_AIR.includes(values.kind)) misfits.push({ extra: "in" });
    return misfits;
  },
  lower: ({ kind, ...rest }, into) => {
    into.shows = { kind, ...present(rest) };
  },
});
