// How long the server needs for a folder of many records, over its standard input and output.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import type { WorkspaceDiagnosticReport } from "vscode-languageserver";
import { sharedRecords } from "./records.ts";
import { startServer } from "./timed-server.ts";

export interface FolderTimes {
  /** ms until all records are judged for the first time. */
  readonly first: number;
  /** ms until they are asked for again and none has changed. */
  readonly again: number;
  /** ms until a bench that all of them stand on is renamed. */
  readonly rename: number;
}

/** Writes the records into a folder of their own, and asks the server about them. */
export async function timedFolder(
  args: readonly string[],
  folder: string,
  count: number,
  lines: number,
): Promise<FolderTimes> {
  mkdirSync(folder);
  for (const [name, text] of sharedRecords(count, lines)) writeFileSync(join(folder, name), text);
  const { connection, stop } = await startServer(args, pathToFileURL(folder).href);
  const timed = async <T>(method: string, params: unknown): Promise<readonly [number, T]> => {
    const start = performance.now();
    const answer = await connection.sendRequest<T>(method, params);
    return [performance.now() - start, answer];
  };
  const judge = (before: WorkspaceDiagnosticReport) =>
    timed<WorkspaceDiagnosticReport>("workspace/diagnostic", {
      previousResultIds: before.items.map(({ uri, resultId = "" }) => ({ uri, value: resultId })),
    });
  const [first, report] = await judge({ items: [] });
  if (report.items.length < count) throw new Error(`only ${report.items.length} records were judged`);
  const [again] = await judge(report);
  const [rename] = await timed("textDocument/rename", {
    textDocument: { uri: pathToFileURL(join(folder, "shop.headnote")).href },
    position: { line: 2, character: 8 },
    newName: "slow",
  });
  await stop();
  return { first, again, rename };
}
