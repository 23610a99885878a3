// The swirl meter of a bench.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, choice, optional, quantity } from "../slots.ts";

export const swirlMeter = property({
  keyword: "swirl-meter",
  within: ["bench"],
  slots: { kind: choice(["impulse", "paddle"]), bore: after("bore", optional(quantity("length"))) },
  doc: "Swirl meter of the bench: impulse (torque) or paddle (speed), and the bore it sits in.",
  example: "swirl-meter impulse bore 4.030 in",
  lower: ({ kind, ...rest }, into) => {
    into.swirlMeter = { kind, ...present(rest) };
  },
});
