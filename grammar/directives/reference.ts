// The air that results are stated in.
import { property } from "../directive.ts";
import { air } from "../slots.ts";

export const reference = property({
  keyword: "reference",
  within: ["session", "run"],
  slots: { air: air() },
  doc: "Reference air that corrected flow is stated in: a named one, or temperature, pressure and humidity. Without this line results stay in the air of the day.",
  example: "reference isa",
  lower: ({ air }, into) => {
    into.reference = air;
  },
});
