// Computes the traces of a file, each in the set-up of the run that it belongs to.

import { evaluateTrace, type RawTrace } from "../../shared/calc/trace/evaluate-trace.ts";
import { tableSamples } from "../../shared/calc/trace/table-samples.ts";
import { displayColumn } from "../../shared/calc/trace/trace-flow.ts";
import type { Run, Trace } from "../../shared/model/model.ts";
import type { Setup } from "../../shared/model/setup.ts";
import type { TraceResult } from "../../shared/model/trace-result.ts";
import { folderOf, isWithin, resolvePath } from "../../shared/text/path.ts";
import type { Files } from "./files.ts";
import { readLog } from "./log-file.ts";
import type { Owner, OwningRun } from "./owning-run.ts";
import type { Placed, SourceFile } from "./source-file.ts";

/** A trace of a file with its result, and where the run stands that it belongs to. */
export interface ComputedTrace {
  readonly placed: Placed<Trace>;
  readonly run: OwningRun;
  readonly result: TraceResult;
}

/** What a trace was computed from: while that is the same, so is the result. */
interface Remembered {
  readonly setup: Setup;
  readonly log: string | undefined;
  readonly result: TraceResult;
}

const remembered = new WeakMap<Trace, Remembered>();

/** The traces of a file whose runs are known, in order. */
export function tracesOf(file: SourceFile, owner: Owner, files: Files): readonly ComputedTrace[] {
  return file.others.flatMap(({ entity, start, path }) => {
    const run = entity.kind === "trace" ? owner(entity.of?.id) : undefined;
    if (entity.kind !== "trace" || run === undefined) return [];
    const placed = { entity, start, path };
    return [{ placed, run, result: computeTrace(placed, run.setup, files) }];
  });
}

/** Those that belong to one run. */
export function tracesOfRun(
  traces: readonly ComputedTrace[],
  { path, start }: Pick<Placed<Run>, "path" | "start">,
): readonly ComputedTrace[] {
  if (traces.length === 0) return traces;
  return traces.filter(({ run }) => run.path === path && run.start === start);
}

/** The result of a trace; a log is read through `files` and must lie in the workspace of the record. */
function computeTrace({ entity, path }: Placed<Trace>, setup: Setup, files: Files): TraceResult {
  const read = readOf(entity, path, files);
  const log = read !== undefined && "text" in read ? read.text : undefined;
  const before = remembered.get(entity);
  if (before?.setup === setup && before.log === log && (read === undefined || log !== undefined)) {
    return before.result;
  }
  const result = evaluateTrace(entity, setup, rawTrace(entity, setup, read));
  remembered.set(entity, { setup, log, result });
  return result;
}

type LogRead = { readonly text: string } | { readonly failed: RawTrace["problems"][number] };

/** What the log of a trace holds; `undefined` for a trace without one. */
function readOf({ log, table }: Trace, recordPath: string, files: Files): LogRead | undefined {
  if (log === undefined) return undefined;
  if ((table?.rows.length ?? 0) > 0) return { failed: { kind: "two-sources" } };
  const path = logPath(log.path, recordPath, files);
  if (path === undefined) return { failed: { kind: "outside", path: log.path } };
  const found = files.read(path);
  return "text" in found ? found : { failed: { kind: "unreadable", path: log.path, problem: found.problem } };
}

/** Where a log lies that a record names; `undefined` outside the workspace of the record. */
export function logPath(written: string, recordPath: string, files: Files): string | undefined {
  const path = resolvePath(folderOf(recordPath), written);
  return written.startsWith("/") || !isWithin(path, files.root(recordPath)) ? undefined : path;
}

function rawTrace(trace: Trace, setup: Setup, read: LogRead | undefined): RawTrace {
  const { log, table } = trace;
  if (read !== undefined && "failed" in read)
    return { samples: undefined, problems: [read.failed], isFlow: false };
  const column = displayColumn(setup);
  if (log !== undefined && read !== undefined) {
    const logged = readLog(read.text, log);
    if ("problem" in logged) return { samples: undefined, problems: [logged.problem], isFlow: false };
    return { samples: logged.samples, problems: [], isFlow: column !== "flow" };
  }
  if (table === undefined) return { samples: undefined, problems: [], isFlow: false };
  const hasDisplay = table.columns.some(({ name }) => name === column);
  const samples = tableSamples(table, hasDisplay ? column : "flow");
  return { samples, problems: [], isFlow: !hasDisplay && column !== "flow" };
}
