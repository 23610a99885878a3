// `headnote chart`: draws a record's runs into a file.
import { extname, resolve } from "node:path";
import { PORT_AREAS } from "../../../shared/calc/port-areas.ts";
import { type ChartOptions, chartSpec } from "../../../shared/render/chart.ts";
import { DARK_THEME, LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { printable } from "../../../shared/text/printable.ts";
import { chartRuns } from "../chart-runs.ts";
import { drawing } from "../drawings.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import { openRecord } from "../open-record.ts";
import { pickRuns } from "../pick-runs.ts";
import { type Call, complain, listOption, type Subcommand, textOption } from "../subcommand.ts";
import { replaceFile } from "../write-file.ts";

/** Pixels; a wider picture is no chart any more and a narrower one has no room for its words. */
const NARROWEST = 280;
const WIDEST = 10_000;

export const chart: Subcommand = {
  name: "chart",
  args: "<file>",
  summary: "draw runs: flow, discharge coefficient and settle times on lift",
  examples: [
    ["headnote chart as-cast.headnote -o flow.svg", "all its runs, baselines greyed"],
    ["headnote chart stages.headnote -o bowl.png --run bowl", "one run against its baseline"],
    ["headnote chart as-cast.headnote -o flow.json", "the chart itself, in Vega-Lite"],
  ],
  options: [
    { flags: "-o, --output <file>", about: "the picture: .svg, .png, or .json for the chart in Vega-Lite" },
    { flags: "--run <id>", about: "only this run and its baseline; may be repeated", isRepeatable: true },
    {
      flags: "--cd <area>",
      about: "the area that the discharge coefficient is set on",
      choices: PORT_AREAS.map(({ name }) => name),
      preset: "curtain",
    },
    {
      flags: "--x <axis>",
      about: "lift, or lift over valve diameter",
      choices: ["lift", "lift-ratio"],
      preset: "lift",
    },
    { flags: "--width <pixels>", about: "width of the picture", preset: "760" },
    { flags: "--theme <theme>", about: "colours", choices: ["light", "dark"], preset: "light" },
  ],
  run: async (call, io) => {
    const output = textOption(call, "output");
    const draw = output === undefined ? undefined : drawing(extname(output));
    if (output === undefined || draw === undefined) {
      complain(io, "say where to draw: -o FILE, ending in .svg, .png or .json");
      return UNUSABLE;
    }
    const width = widthOf(textOption(call, "width") ?? "");
    if (width === undefined) {
      complain(io, `--width takes a whole number of pixels from ${NARROWEST} to ${WIDEST}`);
      return UNUSABLE;
    }
    const record = await openRecord(call.args[0] ?? "", io);
    const picked = record && pickRuns(record, listOption(call, "run"), io);
    if (record === undefined || picked === undefined) return UNUSABLE;
    const runs = chartRuns(record, picked);
    const drawn = await draw(chartSpec(runs, { width, ...chartOptions(call) }));
    const bytes = typeof drawn === "string" ? new TextEncoder().encode(drawn) : drawn;
    const problem = replaceFile(resolve(io.cwd, output), bytes, io);
    if (problem !== undefined) {
      complain(io, `${output}: ${problem}`);
      return UNUSABLE;
    }
    const names = runs.map(({ result }) => result.setup.run.id).join(", ");
    io.err(printable(`wrote ${output}${names === "" ? ", which has no run to show" : `: ${names}`}`));
    io.err("\n");
    return FINE;
  },
};

function widthOf(text: string): number | undefined {
  const width = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return width >= NARROWEST && width <= WIDEST ? width : undefined;
}

function chartOptions(call: Call): ChartOptions {
  const area = PORT_AREAS.find(({ name }) => name === textOption(call, "cd"))?.name;
  return {
    ...(area !== undefined && { cd: area }),
    xAxis: textOption(call, "x") === "lift-ratio" ? "lift-ratio" : "lift",
    theme: textOption(call, "theme") === "dark" ? DARK_THEME : LIGHT_THEME,
  };
}
