// The volume of a port.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const volume = property({
  keyword: "volume",
  within: ["port"],
  slots: { volume: quantity("volume") },
  doc: "Volume of the port, as poured.",
  example: "volume 185 cm3",
  lower: ({ volume }, into) => {
    into.volume = volume;
  },
});
