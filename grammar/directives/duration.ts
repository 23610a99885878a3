// How long a cam holds its valve open.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const duration = property({
  keyword: "duration",
  within: ["cam"],
  slots: { angle: quantity("angle") },
  doc: "Duration of the event in crank degrees, from opening to closing.",
  example: "duration 262 deg",
  lower: ({ angle }, into) => {
    into.duration = angle;
  },
});
