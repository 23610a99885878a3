// What the foundry cast into the head.
import { property } from "../directive.ts";
import { text } from "../slots.ts";

export const casting = property({
  keyword: "casting",
  within: ["head"],
  slots: { casting: text() },
  doc: "Casting mark of the head, as it stands on it.",
  example: 'casting "114 R2"',
  lower: ({ casting }, into) => {
    into.casting = casting;
  },
});
