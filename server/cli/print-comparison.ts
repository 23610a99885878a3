// What `headnote compare` does, apart from its command line.
import { extname, resolve } from "node:path";
import { chartSpec } from "../../shared/render/chart.ts";
import type { ChartRun } from "../../shared/render/chart-run.ts";
import { compareCsv } from "../../shared/render/compare-csv.ts";
import { type CompareInput, type CompareRun, compareLabels } from "../../shared/render/compare-input.ts";
import { compareMarkdown } from "../../shared/render/compare-markdown.ts";
import { compareReport } from "../../shared/render/compare-report.ts";
import { type Compared, comparedRuns, differs } from "../../shared/render/compare-table.ts";
import { compareText } from "../../shared/render/compare-text.ts";
import { printable } from "../../shared/text/printable.ts";
import { rowFindings } from "../service/row-findings.ts";
import { type ComparedRun, openCompared } from "./compared-run.ts";
import { drawing } from "./drawings.ts";
import { FINE, FOUND, UNUSABLE } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { type Call, complain, flagOption, textOption } from "./subcommand.ts";
import { replaceFile } from "./write-file.ts";

/** By the name behind `--format`. */
const FORMATS: Readonly<Record<string, (baseline: CompareRun, all: readonly Compared[]) => string>> = {
  text: compareText,
  json: (baseline, all) => `${JSON.stringify(compareReport(baseline, all), null, 2)}\n`,
  csv: compareCsv,
  markdown: compareMarkdown,
};

/** Prints the runs of a call over the first of them, draws them if asked to, and gives the exit code. */
export async function printComparison(call: Call, io: Io): Promise<number> {
  const opened: ComparedRun[] = [];
  for (const written of call.args) {
    const side = await openCompared(written, io);
    if (side === undefined) return UNUSABLE;
    opened.push(side);
  }
  const runs = named(opened);
  const [baseline, ...others] = runs;
  if (baseline === undefined || others.length === 0) {
    complain(io, "say what to compare: headnote compare BASELINE RUN");
    return UNUSABLE;
  }
  const input: CompareInput = { baseline, others, anyway: flagOption(call, "anyway") };
  const all = comparedRuns(input);
  io.out(FORMATS[textOption(call, "format") ?? ""]?.(baseline, all) ?? "");
  const drawn = await draw(opened, runs, all, call, io);
  if (drawn !== undefined) {
    complain(io, drawn);
    return UNUSABLE;
  }
  return all.some(differs) ? FOUND : FINE;
}

function named(opened: readonly ComparedRun[]): readonly CompareRun[] {
  const labels = compareLabels(
    opened.map(({ run, file, revision }) => ({ id: run.placed.entity.id, file, revision })),
  );
  return opened.map(({ run, file, revision }, index) => ({
    result: run.result,
    file,
    revision,
    label: labels[index] ?? "",
  }));
}

/** Draws the runs into the file that was asked for, if any; gives what went wrong. */
async function draw(
  opened: readonly ComparedRun[],
  runs: readonly CompareRun[],
  all: readonly Compared[],
  call: Call,
  io: Io,
): Promise<string | undefined> {
  const output = textOption(call, "output");
  if (output === undefined) return undefined;
  const write = drawing(extname(output));
  if (write === undefined) return `${output}: a picture's name ends in .svg, .png or .json`;
  if (all.some(({ isTold }) => !isTold))
    return `${output}: not drawn, since runs that were not read alike would look alike there; --anyway draws them`;
  const shown = opened.map(({ run, findings }, index): ChartRun => {
    const role = index === 0 ? "baseline" : index === 1 ? "main" : "compared";
    const label = runs[index]?.label ?? "";
    return { result: run.result, label, role, findings: rowFindings(run, findings) };
  });
  const drawn = await write(chartSpec(shown));
  const bytes = typeof drawn === "string" ? new TextEncoder().encode(drawn) : drawn;
  const problem = replaceFile(resolve(io.cwd, output), bytes, io);
  if (problem !== undefined) return `${output}: ${problem}`;
  io.err(`${printable(`wrote ${output}`)}\n`);
  return undefined;
}
