// Who stood at the bench.
import { property } from "../directive.ts";
import { text } from "../slots.ts";

export const operator = property({
  keyword: "operator",
  within: ["session"],
  slots: { operator: text() },
  doc: "Who took the readings.",
  example: 'operator "bench hand"',
  lower: ({ operator }, into) => {
    into.operator = operator;
  },
});
