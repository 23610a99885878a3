// `headnote compare`: lays runs over a baseline, lift by lift.
import { printComparison } from "../print-comparison.ts";
import type { Subcommand } from "../subcommand.ts";

export const compare: Subcommand = {
  name: "compare",
  args: "<baseline> <run...>",
  summary: "lay runs over a baseline: gain by lift, and what chance alone could have made of it",
  examples: [
    ["headnote compare as-cast.headnote short-side.headnote", "two records of one run each"],
    ["headnote compare stages.headnote#as-cast stages.headnote#bowl", "two runs of one record"],
    ["headnote compare HEAD~3:head.headnote#i3 head.headnote#i3", "as git has it, and as it stands"],
    ["headnote compare quick.headnote slow.headnote -o benches.svg", "one port on two benches, drawn too"],
  ],
  options: [
    {
      flags: "--format <format>",
      about: "how the comparison is set",
      choices: ["text", "json", "csv", "markdown"],
      preset: "text",
    },
    { flags: "-o, --output <file>", about: "a picture of the runs as well: .svg, .png or .json (Vega-Lite)" },
    { flags: "--anyway", about: "tell gains also of runs that were not read alike" },
  ],
  run: printComparison,
};
