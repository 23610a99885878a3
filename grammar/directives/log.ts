// A trace that stands in a file of its own.

import { present } from "../../shared/model/present.ts";
import { property } from "../directive.ts";
import { after, channel, optional, text } from "../slots.ts";

export const log = property({
  keyword: "log",
  within: ["trace"],
  slots: {
    path: text(),
    time: after("time", channel("time")),
    depression: after("depression", channel("pressure")),
    flow: after("flow", optional(channel("flow"))),
  },
  doc: "A CSV file that holds the trace, with the names of its columns and their units.",
  example: 'log "traces/i3-0400.csv" time "t" s depression "dp" inH2O flow "q" cfm',
  lower: ({ path, ...channels }, into) => {
    into.log = { path, ...present(channels) };
  },
});
