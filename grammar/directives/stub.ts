// The pipe on an exhaust port.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, optional, quantity, quantityOr } from "../slots.ts";

export const stub = property({
  keyword: "stub",
  within: ["session", "run"],
  slots: { bore: quantityOr("length", "none"), length: after("length", optional(quantity("length"))) },
  doc: "Bore and length of the stub pipe on an exhaust port, or none. Results with and without one are not comparable.",
  example: "stub 1.750 in length 6 in",
  misfits: ({ bore, length }) => (bore === "none" && length !== undefined ? [{ extra: "length" }] : []),
  lower: ({ bore, length }, into) => {
    into.stub = bore === "none" ? "none" : { bore, ...present({ length }) };
  },
});
