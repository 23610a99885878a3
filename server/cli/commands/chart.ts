// `headnote chart`: draws a record's runs into a file.
import { extname, resolve } from "node:path";
import { PORT_AREAS } from "../../../shared/calc/port-areas.ts";
import type { Dimension } from "../../../shared/quantity/dimension.ts";
import { findUnit, nearestUnits, type Unit } from "../../../shared/quantity/unit.ts";
import { type ChartOptions, chartSpec } from "../../../shared/render/chart.ts";
import { DARK_THEME, LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { printable } from "../../../shared/text/printable.ts";
import { chartRuns } from "../chart-runs.ts";
import { drawing } from "../drawings.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import type { Io } from "../io.ts";
import { openRecord } from "../open-record.ts";
import { pickRuns } from "../pick-runs.ts";
import { type Call, complain, listOption, type Subcommand, textOption } from "../subcommand.ts";
import { replaceFile } from "../write-file.ts";

/** Pixels; a wider picture is no chart any more and a narrower one has no room for its words. */
const NARROWEST = 280;
const WIDEST = 10_000;
/** What the axes of a chart show. */
const SHOWN: readonly Dimension[] = ["length", "flow", "time"];

export const chart: Subcommand = {
  name: "chart",
  args: "<file>",
  summary: "draw runs: flow, gains, discharge coefficient and settle times on lift",
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
    {
      flags: "--unit <unit>",
      about: "show lift, flow or time in this unit; may be repeated (default: as the record)",
      isRepeatable: true,
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
    const units = unitsOf(call, io);
    if (units === undefined) return UNUSABLE;
    const record = await openRecord(call.args[0] ?? "", io);
    const picked = record && pickRuns(record, listOption(call, "run"), io);
    if (record === undefined || picked === undefined) return UNUSABLE;
    const runs = chartRuns(record, picked);
    const drawn = await draw(chartSpec(runs, { width, units, ...chartOptions(call) }));
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

/** The units asked for; `undefined` after having said which one a chart cannot take. */
function unitsOf(call: Call, io: Io): readonly Unit[] | undefined {
  const units: Unit[] = [];
  for (const text of listOption(call, "unit")) {
    const found = findUnit(text)?.unit;
    if (found === undefined || !found.dimensions.some((dimension) => SHOWN.includes(dimension))) {
      const hint = nearestUnits(text).find((near) => near !== text);
      complain(
        io,
        `--unit takes a unit of length, flow or time, as in mm, L/s or s: '${text}' is none${
          found === undefined && hint !== undefined ? `; did you mean '${hint}'?` : ""
        }`,
      );
      return undefined;
    }
    units.push(found);
  }
  return units;
}

function chartOptions(call: Call): ChartOptions {
  const area = PORT_AREAS.find(({ name }) => name === textOption(call, "cd"))?.name;
  return {
    ...(area !== undefined && { cd: area }),
    xAxis: textOption(call, "x") === "lift-ratio" ? "lift-ratio" : "lift",
    theme: textOption(call, "theme") === "dark" ? DARK_THEME : LIGHT_THEME,
  };
}
