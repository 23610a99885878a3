// The run that this one is compared with.
import { property } from "../directive.ts";
import { reference } from "../slots.ts";

export const baseline = property({
  keyword: "baseline",
  within: ["run"],
  slots: { run: reference("run") },
  doc: "The run that this one's gain is measured from.",
  example: "baseline i3-as-cast",
  lower: ({ run }, into) => {
    into.baseline = run;
  },
});
