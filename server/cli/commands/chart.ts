// `headnote chart`: draws a record's runs into a file.
import { extname, resolve } from "node:path";
import { PORT_AREAS } from "../../../shared/calc/port-areas.ts";
import { type ChartOptions, chartSpec } from "../../../shared/render/chart.ts";
import type { ChartRun } from "../../../shared/render/chart-run.ts";
import type { VegaLiteSpec } from "../../../shared/render/chart-shell.ts";
import type { Stretch } from "../../../shared/render/chart-stretch.ts";
import { DARK_THEME, LIGHT_THEME } from "../../../shared/render/chart-theme.ts";
import { ladderChart } from "../../../shared/render/ladder-chart.ts";
import { mapSpec } from "../../../shared/render/map-chart.ts";
import { runName } from "../../../shared/render/run-name.ts";
import { traceChart } from "../../../shared/render/trace-chart.ts";
import { printable } from "../../../shared/text/printable.ts";
import type { ComputedRun } from "../../analysis/project.ts";
import { velocityMapsOf } from "../../analysis/velocity-maps.ts";
import { chartRuns } from "../../service/chart-runs.ts";
import { statedValue } from "../../service/stated-value.ts";
import { drawing } from "../drawings.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import type { Io } from "../io.ts";
import { type OpenRecord, openRecord } from "../open-record.ts";
import { type PickedBlock, pickBlock } from "../pick-block.ts";
import { pickRuns } from "../pick-runs.ts";
import { type Call, complain, flagOption, listOption, type Subcommand, textOption } from "../subcommand.ts";
import { UNIT_OPTION, unitsAsked } from "../unit-option.ts";
import { replaceFile } from "../write-file.ts";

/** Pixels; a wider picture is no chart any more and a narrower one has no room for its words. */
const NARROWEST = 280;
const WIDEST = 10_000;

export const chart: Subcommand = {
  name: "chart",
  args: "<file>",
  summary: "draw runs on lift, or a trace on time, a ladder on depression, a velocity map",
  examples: [
    ["headnote chart as-cast.headnote -o flow.svg", "all its runs, baselines greyed"],
    ["headnote chart stages.headnote -o bowl.png --run bowl", "one run against its baseline"],
    ["headnote chart stages.headnote -o pinch.svg --map", "the section of the port with its speeds"],
    ["headnote chart as-cast.headnote -o flow.json", "the chart itself, in Vega-Lite"],
    ["headnote chart as-cast.headnote -o top.svg --from 0.35in", "the upper part of the curve more closely"],
    ["headnote chart as-cast.headnote -o up.svg --trace 0.500", "depression and apparent area on time"],
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
    UNIT_OPTION,
    { flags: "--from <lift>", about: "only from this lift on, with its unit, as in 0.25in" },
    { flags: "--to <lift>", about: "only up to this lift" },
    { flags: "--map", about: "instead, the velocity map of the record, or of the run that --run names" },
    { flags: "--trace [lift]", about: "the trace instead, of that lift if there are several" },
    { flags: "--ladder [lift]", about: "the ladder instead, of that lift if there are several" },
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
    const units = unitsAsked(call, io);
    const lifts = stretchOf(call, io);
    if (units === undefined || lifts === "none") return UNUSABLE;
    const record = await openRecord(call.args[0] ?? "", io);
    const picked = record && pickRuns(record, listOption(call, "run"), io);
    if (record === undefined || picked === undefined) return UNUSABLE;
    const options = { width, units, ...(lifts !== undefined && { lifts }), ...chartOptions(call) };
    const block = pickBlock(record, call, io);
    if (block === "not found") return UNUSABLE;
    const picture =
      block !== undefined
        ? blockPicture(block, options)
        : flagOption(call, "map")
          ? mapPicture(record, picked, io, options)
          : runsPicture(chartRuns(record, picked), options);
    if (picture === undefined) return UNUSABLE;
    const drawn = await draw(picture.spec);
    const bytes = typeof drawn === "string" ? new TextEncoder().encode(drawn) : drawn;
    const problem = replaceFile(resolve(io.cwd, output), bytes, io);
    if (problem !== undefined) {
      complain(io, `${output}: ${problem}`);
      return UNUSABLE;
    }
    io.err(printable(`wrote ${output}${picture.about}`));
    io.err("\n");
    return FINE;
  },
};

/** A picture and how the talk goes on behind its name. */
interface Picture {
  readonly spec: VegaLiteSpec;
  readonly about: string;
}

function runsPicture(runs: readonly ChartRun[], options: ChartOptions): Picture {
  const names = runs.map(({ result }) => runName(result.setup.run)).join(", ");
  return {
    spec: chartSpec(runs, options),
    about: names === "" ? ", which has no run to show" : `: ${names}`,
  };
}

/** The first map of the picked runs; `undefined` after having said that there is none. */
function mapPicture(
  { analysis, shown }: OpenRecord,
  picked: readonly ComputedRun[],
  io: Io,
  options: ChartOptions,
): Picture | undefined {
  const ids = new Set(picked.map(({ placed }) => placed.entity.id));
  const maps = velocityMapsOf(analysis).filter(({ placed }) => ids.has(placed.entity.of?.id ?? ""));
  const [first] = maps;
  if (first === undefined) {
    complain(
      io,
      `${shown}: no map of ${[...ids].join(", ") || "a run"} is in it; 'headnote explain map' tells how to write one`,
    );
    return undefined;
  }
  const { entity } = first.placed;
  const others = maps.length > 1 ? `, the first of ${maps.length} maps; --run tells whose` : "";
  return {
    spec: mapSpec(entity, first.result, options),
    about: `: map of ${entity.of?.id ?? ""}${others}`,
  };
}

/** Of a trace on time, or of a ladder on depression. */
function blockPicture({ block, title }: PickedBlock, options: ChartOptions): Picture {
  const spec = "trace" in block ? traceChart(block, options) : ladderChart(block, options);
  return { spec, about: `: ${title}` };
}

function widthOf(text: string): number | undefined {
  const width = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return width >= NARROWEST && width <= WIDEST ? width : undefined;
}

/** No valve opens this far, in m. */
const HIGHEST = 1000;

/** Lifts in m; `undefined` where none is asked for, and "none" after having said what is no stretch. */
function stretchOf(call: Call, io: Io): Stretch | undefined | "none" {
  const [from, to] = ["from", "to"].map((name) => textOption(call, name));
  if (from === undefined && to === undefined) return undefined;
  const low = from === undefined ? 0 : statedValue(from, "length");
  const high = to === undefined ? HIGHEST : statedValue(to, "length");
  if (low !== undefined && high !== undefined && low < high) return [low, high];
  complain(io, "--from and --to take a lift each with its unit, the lower one first, as in 0.25in or '8 mm'");
  return "none";
}

function chartOptions(call: Call): ChartOptions {
  const area = PORT_AREAS.find(({ name }) => name === textOption(call, "cd"))?.name;
  return {
    ...(area !== undefined && { cd: area }),
    xAxis: textOption(call, "x") === "lift-ratio" ? "lift-ratio" : "lift",
    theme: textOption(call, "theme") === "dark" ? DARK_THEME : LIGHT_THEME,
  };
}
