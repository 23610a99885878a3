// `headnote bench`: what all records together say of the benches that they were taken on.
import { printBenches } from "../print-benches.ts";
import type { Subcommand } from "../subcommand.ts";

export const bench: Subcommand = {
  name: "bench",
  args: "[path...]",
  summary: "say what the records show of the benches: how quick, how repeatable, how true",
  examples: [
    ["headnote bench", "all benches in the records of this folder and below"],
    ["headnote bench --bench north a114", "one of them, in one head's records"],
    ["headnote bench -o benches.svg", "settle times and check plates as a picture"],
  ],
  options: [
    { flags: "--bench <id>", about: "only this bench" },
    {
      flags: "--format <format>",
      about: "how the report is set",
      choices: ["text", "json", "markdown"],
      preset: "text",
    },
    {
      flags: "-o, --output <file>",
      about: "a picture instead of the report: .svg, .png, or .json for the chart in Vega-Lite",
    },
  ],
  run: printBenches,
};
