// What tables are made from, taken from the runs and findings of a record.
import type { Setup } from "../../shared/model/setup.ts";
import type { AtLine, PlateInput, TableInput } from "../../shared/render/table-input.ts";
import { plateChecksOf } from "../analysis/plate-checks.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { portWords, rowFindings } from "./row-findings.ts";
import type { Checked } from "./service.ts";

function platesOf({ analysis, findings }: Checked): readonly PlateInput[] {
  return plateChecksOf(analysis).map(({ placed: { start }, result }) => {
    const own = findings.filter(({ finding }) => finding.span.line === start);
    return { result, startLine: start, findings: own.map(({ finding }) => finding.code) };
  });
}

/** `file` as it is to be printed. Who asks for one run asks for its traces and ladders, and not for the plate: no ids ask for all. */
export function tableInput(
  file: string,
  record: Checked,
  runs: readonly ComputedRun[],
  ids: readonly string[],
): TableInput {
  const { findings, analysis } = record;
  const isPicked = ({ result }: { readonly result: { readonly setup: Setup } }) =>
    ids.length === 0 || ids.includes(result.setup.run.id);
  const starts = new Map(runs.map(({ placed, result }) => [result, placed.start]));
  const codes = new Map(runs.map((run) => [run.result, rowFindings(run, findings)]));
  const words = new Map(runs.map((run) => [run.result, portWords(run, findings)]));
  return {
    file,
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
