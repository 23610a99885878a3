// Where the cam's peak lift stands.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const centre = property({
  keyword: "centre",
  within: ["cam"],
  slots: { angle: quantity("angle") },
  doc: "Crank angle of peak lift from top dead centre of the overlap.",
  example: "centre 108 deg",
  lower: ({ angle }, into) => {
    into.centre = angle;
  },
});
