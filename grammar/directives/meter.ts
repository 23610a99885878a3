// Where a bench's meter sits along the air's way.
import { property } from "../directive.ts";
import { choice } from "../slots.ts";

export const meter = property({
  keyword: "meter",
  within: ["bench"],
  slots: { place: choice(["upstream", "downstream", "ambient"]) },
  doc: "Where the meter sits along the air's way, seen from the test piece; or in the room's own air.",
  example: "meter downstream",
  lower: ({ place }, into) => {
    into.meter = place;
  },
});
