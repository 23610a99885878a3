// How the air enters the port.
import { property } from "../directive.ts";
import { choice } from "../slots.ts";

export const entry = property({
  keyword: "entry",
  within: ["session", "run"],
  slots: { entry: choice(["bare", "clay", "radiused", "manifold"]) },
  doc: "Entry of an intake port: bare, with a clay or turned radius, or with the manifold fitted. A sharp edge costs flow that the port does not.",
  example: "entry radiused",
  lower: ({ entry }, into) => {
    into.entry = entry;
  },
});
