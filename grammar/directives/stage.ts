// How far the port's shape has come.
import { property } from "../directive.ts";
import { text } from "../slots.ts";

export const stage = property({
  keyword: "stage",
  within: ["run"],
  slots: { stage: text() },
  doc: "What was done to the port up to this run; runs of one port with different stages are its history.",
  example: 'stage "short side laid back 0.040"',
  lower: ({ stage }, into) => {
    into.stage = stage;
  },
});
