// The valve seat.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, optional, quantity } from "../slots.ts";

export const seat = property({
  keyword: "seat",
  within: ["port"],
  slots: { angle: quantity("angle"), width: after("width", optional(quantity("length"))) },
  doc: "Seat angle from the plane across the stem, and the width of the seat's face.",
  example: "seat 45 deg width 0.060 in",
  lower: ({ angle, ...rest }, into) => {
    into.seat = { angle, ...present(rest) };
  },
});
