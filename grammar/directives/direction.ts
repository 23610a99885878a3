// Which way the air goes in a run.
import { property } from "../directive.ts";
import { choice } from "../slots.ts";

export const direction = property({
  keyword: "direction",
  within: ["run"],
  slots: { direction: choice(["draws", "blows"]) },
  doc: "Whether the bench draws air through the port or blows it. Unless stated it draws on the intake side and blows on the exhaust side.",
  example: "direction draws",
  lower: ({ direction }, into) => {
    into.direction = direction;
  },
});
