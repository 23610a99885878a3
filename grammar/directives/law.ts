// The shape of a cam's rise.
import { property } from "../directive.ts";
import { choice } from "../slots.ts";

export const law = property({
  keyword: "law",
  within: ["cam"],
  slots: { law: choice(["harmonic", "cycloidal", "p345", "p4567"]) },
  doc: "Law of the cam's rise and fall: simple harmonic, cycloidal, or the polynomials 3-4-5 and 4-5-6-7.",
  example: "law p345",
  lower: ({ law }, into) => {
    into.law = law;
  },
});
