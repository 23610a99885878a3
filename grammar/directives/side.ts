// Intake or exhaust.
import { property } from "../directive.ts";
import { choice } from "../slots.ts";

export const side = property({
  keyword: "side",
  within: ["port", "cam"],
  slots: { side: choice(["intake", "exhaust"]) },
  doc: "Whether this is the intake or the exhaust.",
  example: "side intake",
  lower: ({ side }, into) => {
    into.side = side;
  },
});
