// The leak of the set-up.

import { present } from "../../shared/model/present.ts";
import { type Misfit, property } from "../directive.ts";
import { after, number, optional, quantity, quantityOr } from "../slots.ts";

export const leak = property({
  keyword: "leak",
  within: ["session", "run"],
  slots: {
    flow: quantityOr("flow", "none"),
    depression: after("at", optional(quantity("pressure"))),
    exponent: after("exponent", optional(number())),
  },
  doc: "Leak of the set-up with the valve shut, as the display shows it, at the depression where it was read; or none. At another depression it follows the depression to the power of the exponent, 0.5 unless stated.",
  example: "leak 1.8 cfm at 28 inH2O",
  misfits: ({ flow, depression, exponent }) => {
    if (flow !== "none")
      return depression === undefined ? [{ missing: "a pressure with its unit behind 'at'" }] : [];
    const extra: Misfit[] = [];
    if (depression !== undefined) extra.push({ extra: "depression" });
    if (exponent !== undefined) extra.push({ extra: "exponent" });
    return extra;
  },
  lower: ({ flow, depression, exponent }, into) => {
    if (flow === "none") into.leak = "none";
    else if (depression !== undefined) into.leak = { flow, depression, ...present({ exponent }) };
  },
});
