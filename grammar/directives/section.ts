// A named section of the port.
import { property } from "../directive.ts";
import { label, quantity } from "../slots.ts";

export const section = property({
  keyword: "section",
  within: ["port"],
  repeatable: true,
  slots: { name: label(), area: quantity("area") },
  doc: "A section of the port with its area; the mean air speed is given at each.",
  example: "section pinch 2.05 in2",
  lower: ({ name, area }, into) => {
    into.sections = [...into.sections, { name, area }];
  },
});
