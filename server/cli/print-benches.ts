// What `headnote bench` does, apart from its command line.
import { extname, resolve } from "node:path";
import { nearest } from "../../shared/quantity/nearest.ts";
import { benchChart } from "../../shared/render/bench-chart.ts";
import { benchDocument } from "../../shared/render/bench-document.ts";
import { benchMarkdown } from "../../shared/render/bench-markdown.ts";
import { type BenchPage, benchText } from "../../shared/render/bench-text.ts";
import { printable } from "../../shared/text/printable.ts";
import { benchPages } from "./bench-pages.ts";
import { type Drawing, drawing } from "./drawings.ts";
import { FINE, UNUSABLE } from "./exit-code.ts";
import { findFiles, STDIN } from "./find-files.ts";
import type { Io } from "./io.ts";
import { shownPath } from "./shown-path.ts";
import { type Call, complain, textOption } from "./subcommand.ts";
import { openWorkspace, stdinPath, stdinText } from "./workspace.ts";
import { replaceFile } from "./write-file.ts";

/** By the name behind `--format`. */
const FORMATS: Readonly<Record<string, (pages: readonly BenchPage[]) => string>> = {
  text: benchText,
  json: (pages) => `${JSON.stringify(benchDocument(pages), null, 2)}\n`,
  markdown: benchMarkdown,
};

/** Prints or draws what the records of a call say of their benches, and gives the exit code. */
export async function printBenches(call: Call, io: Io): Promise<number> {
  const output = textOption(call, "output");
  const draw = output === undefined ? undefined : drawing(extname(output));
  if (output !== undefined && draw === undefined) {
    complain(io, "say where to draw: -o FILE, ending in .svg, .png or .json");
    return UNUSABLE;
  }
  const read = await readBenches(call, io);
  const pages = pick(read.pages, textOption(call, "bench"), io);
  if (pages === undefined) return UNUSABLE;
  if (output === undefined || draw === undefined) {
    io.out(FORMATS[textOption(call, "format") ?? ""]?.(pages) ?? "");
    return read.isWhole ? FINE : UNUSABLE;
  }
  const isDrawn = await drawBenches(pages, output, draw, io);
  return isDrawn && read.isWhole ? FINE : UNUSABLE;
}

interface Read {
  readonly pages: readonly BenchPage[];
  /** Whether all that was asked for could be read. */
  readonly isWhole: boolean;
}

/** Reads the records one after another, as `check` finds them. */
async function readBenches(call: Call, io: Io): Promise<Read> {
  const paths = call.args.length === 0 ? ["."] : call.args;
  const stdin = paths.includes(STDIN) ? stdinPath(io.cwd, undefined) : undefined;
  const texts = stdin === undefined ? [] : [[stdin, await stdinText(io)] as const];
  const { service, readSettings } = openWorkspace(io.cwd, new Map(texts));
  const found = await findFiles(paths, io.cwd);
  const files = stdin === undefined ? found.files : [stdin, ...found.files];
  const problems = [...found.problems, ...readSettings(files)];
  const benches = benchPages();
  for (const path of files) {
    const checked = service.check(path);
    const shown = shownPath(io.cwd, path);
    if ("problem" in checked) problems.push(`${shown}: ${checked.problem}`);
    else benches.add(shown, checked.analysis);
  }
  for (const problem of problems) complain(io, problem);
  const homeless = benches.homeless();
  if (homeless > 0) {
    const runs = homeless === 1 ? "1 run is left out" : `${homeless} runs are left out`;
    complain(io, `${runs}, whose bench is not stated or not found: headnote check says where`);
  }
  return { pages: benches.pages(), isWhole: problems.length === 0 };
}

/** The bench of that name; `undefined` after having said that there is none. */
function pick(pages: readonly BenchPage[], id: string | undefined, io: Io): readonly BenchPage[] | undefined {
  if (id === undefined) return pages;
  const picked = pages.filter(({ report }) => report.bench.id === id);
  if (picked.length > 0) return picked;
  const [near] = nearest(
    id,
    pages.map(({ report }) => report.bench.id),
  );
  const hint = near === undefined ? "" : `; did you mean '${near}'?`;
  complain(io, `no record was taken on a bench '${id}'${hint}`);
  return undefined;
}

async function drawBenches(
  pages: readonly BenchPage[],
  output: string,
  draw: Drawing,
  io: Io,
): Promise<boolean> {
  const drawn = await draw(benchChart(pages));
  const bytes = typeof drawn === "string" ? new TextEncoder().encode(drawn) : drawn;
  const problem = replaceFile(resolve(io.cwd, output), bytes, io);
  if (problem !== undefined) {
    complain(io, `${output}: ${problem}`);
    return false;
  }
  const names = pages.map(({ report }) => report.bench.id).join(", ");
  io.err(`${printable(`wrote ${output}${names === "" ? ", which has no bench to show" : `: ${names}`}`)}\n`);
  return true;
}
