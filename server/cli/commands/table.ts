// `headnote table`: prints the results of a record's runs.

import type { Setup } from "../../../shared/model/setup.ts";
import { tableCsv } from "../../../shared/render/table-csv.ts";
import type { AtLine, PlateInput, TableInput } from "../../../shared/render/table-input.ts";
import { tableMarkdown } from "../../../shared/render/table-markdown.ts";
import { tableReport } from "../../../shared/render/table-report.ts";
import { tableText } from "../../../shared/render/table-text.ts";
import { plateChecksOf } from "../../analysis/plate-checks.ts";
import type { ComputedRun } from "../../analysis/project.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import { type OpenRecord, openRecord } from "../open-record.ts";
import { pickRuns } from "../pick-runs.ts";
import { portWords, rowFindings } from "../row-findings.ts";
import { listOption, type Subcommand, textOption } from "../subcommand.ts";

/** By the name behind `--format`. */
const FORMATS: Readonly<Record<string, (input: TableInput) => string>> = {
  text: tableText,
  json: (input) => `${JSON.stringify(tableReport(input), null, 2)}\n`,
  csv: tableCsv,
  markdown: tableMarkdown,
};

export const table: Subcommand = {
  name: "table",
  args: "<file>",
  summary: "print corrected flow, coefficients and uncertainty of every point",
  examples: [
    ["headnote table a114/as-cast.headnote", "all runs, traces and ladders of a record"],
    ["headnote table as-cast.headnote --run i3", "one of them"],
    ["headnote table as-cast.headnote --format csv > flow.csv", "for a spreadsheet"],
  ],
  options: [
    { flags: "--run <id>", about: "only this run; may be repeated", isRepeatable: true },
    {
      flags: "--format <format>",
      about: "how the table is set",
      choices: Object.keys(FORMATS),
      preset: "text",
    },
  ],
  run: async (call, io) => {
    const record = await openRecord(call.args[0] ?? "", io);
    const runs = record && pickRuns(record, listOption(call, "run"), io);
    if (record === undefined || runs === undefined) return UNUSABLE;
    const ids = listOption(call, "run");
    io.out(FORMATS[textOption(call, "format") ?? ""]?.(tableInput(record, runs, ids)) ?? "");
    return FINE;
  },
};

function platesOf({ analysis, findings }: OpenRecord): readonly PlateInput[] {
  return plateChecksOf(analysis).map(({ placed: { start }, result }) => {
    const own = findings.filter(({ finding }) => finding.span.line === start);
    return { result, startLine: start, findings: own.map(({ finding }) => finding.code) };
  });
}

/** Who asks for one run asks for its traces and ladders, and not for the plate. */
function tableInput(record: OpenRecord, runs: readonly ComputedRun[], ids: readonly string[]): TableInput {
  const { shown, findings, analysis } = record;
  const isPicked = ({ result }: { readonly result: { readonly setup: Setup } }) =>
    ids.length === 0 || ids.includes(result.setup.run.id);
  const starts = new Map(runs.map(({ placed, result }) => [result, placed.start]));
  const codes = new Map(runs.map((run) => [run.result, rowFindings(run, findings)]));
  const words = new Map(runs.map((run) => [run.result, portWords(run, findings)]));
  return {
    file: shown,
    runs: runs.map(({ result }) => result),
    plates: ids.length === 0 ? platesOf(record) : [],
    startLine: (run) => starts.get(run) ?? 0,
    findingsOf: (run, row) => codes.get(run)?.get(row) ?? [],
    traces: analysis.traces.filter(isPicked).map(atLine),
    ladders: analysis.ladders.filter(isPicked).map(atLine),
    portWords: (run) => words.get(run) ?? [],
  };
}

function atLine<T>({
  placed,
  result,
}: {
  readonly placed: { readonly start: number };
  readonly result: T;
}): AtLine<T> {
  return { line: placed.start, result };
}
