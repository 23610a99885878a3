// An engine speed that matters.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const speed = property({
  keyword: "speed",
  within: ["engine"],
  repeatable: true,
  slots: { speed: quantity("rotation") },
  doc: "An engine speed that the ports are judged at.",
  example: "speed 6200 rpm",
  lower: ({ speed }, into) => {
    into.speeds = [...into.speeds, speed];
  },
});
