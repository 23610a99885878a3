// Which approach counts as quick on a bench.
import { property } from "../directive.ts";
import { quantity } from "../slots.ts";

export const quick = property({
  keyword: "quick",
  within: ["bench"],
  slots: { time: quantity("time") },
  doc: "An approach to the depression that takes no longer than this is quick.",
  example: "quick 2.0 s",
  lower: ({ time }, into) => {
    into.quick = time;
  },
});
