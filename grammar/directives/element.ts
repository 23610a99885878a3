// The metering element of a bench that shows its pressure drop.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, choice, number, optional, quantity } from "../slots.ts";

export const element = property({
  keyword: "element",
  within: ["bench"],
  slots: {
    kind: choice([
      "orifice",
      "isa-nozzle",
      "long-radius-nozzle",
      "venturi-cast",
      "venturi-machined",
      "venturi-welded",
    ]),
    bore: after("bore", quantity("length")),
    pipe: after("pipe", optional(quantity("length"))),
    taps: after("taps", optional(choice(["corner", "flange", "d-d2"]))),
    coefficient: after("coefficient", optional(number())),
  },
  doc: "Metering element of a bench that shows drop. Without a pipe the element draws from a plenum; a coefficient takes the place of the standard's discharge coefficient.",
  example: "element orifice bore 50 mm pipe 100 mm taps corner",
  lower: ({ kind, bore, ...rest }, into) => {
    into.element = { kind, bore, ...present(rest) };
  },
});
